import type { EventList } from './event-list.ts';
import type { ForcePart } from './force-part.ts';
import { meanBetween } from './mean.ts';
import type { ReadOptions } from './options.ts';
import type { Prepared } from './prepared.ts';
import { spikesOfPull } from './spikes.ts';
import type { TravelPart } from './travel-part.ts';
import { referenceLength } from './travel-part.ts';

/** Whether the record can carry its numbers, and everything a reader of them must know. */
export interface RecordVerdict {
  readonly valid: boolean;
  readonly maximumIsAtLeast: boolean;
  readonly notes: readonly string[];
}

/** A finding: its sentence, and whether it spoils the record or only bounds the maximum from below. */
interface Remark {
  readonly text: string;
  readonly spoils?: boolean;
  readonly atLeast?: boolean;
}

function kN(value: number): string {
  return `${Number(value.toPrecision(5))} kN`;
}

function endRemark(prepared: Prepared, force: ForcePart, options: ReadOptions): Remark | null {
  if (force.parting) return null;
  const { clean } = prepared;
  const last = clean[clean.length - 1] as number;
  const fall = 100 * (1 - last / force.maximum.force_kN);
  const fallen = fall > 0.5 ? `, ${fall.toFixed(0)} % below the maximum` : '';
  const text = `The record stops before parting, at ${kN(last)}${fallen}`;
  const agreed = options.agreedDrop_pct;
  if (agreed !== undefined && fall >= agreed)
    return { text: `${text}: past the agreed drop of ${agreed} %, so the maximum is final.` };
  return { text: `${text}: the maximum so far counts as "at least".`, atLeast: true };
}

function gapRemark(prepared: Prepared, force: ForcePart): Remark | null {
  const near = prepared.sampling.gaps.filter(
    (i) => Math.abs(i - 0.5 - force.maximum.sample) <= 2 || i - 1 === force.parting?.last,
  );
  if (near.length === 0) return null;
  return {
    text: 'The record has a gap at the maximum or at parting: the true maximum may have been missed and counts as "at least".',
    atLeast: true,
  };
}

function forceRemarks(prepared: Prepared, force: ForcePart, options: ReadOptions): (Remark | null)[] {
  const { slack, clean, resolution_kN } = prepared;
  const rejected = spikesOfPull(prepared.rejected, force.parting);
  const { maximum, plateau, parting, end } = force;
  const loaded = Math.max(1, end - slack.end);
  const spikeShare = rejected.filter((i) => i > slack.end && i <= end).length / loaded;
  const start = (clean[0] as number) / maximum.force_kN;
  return [
    slack.note === null ? null : { text: slack.note },
    start > 0.2
      ? {
          text: `The record begins under load, at ${(100 * start).toFixed(0)} % of the maximum: what came before is not in it.`,
        }
      : null,
    rejected.length > 0
      ? {
          text: `${rejected.length === 1 ? '1 reading was' : `${rejected.length} readings were`} rejected as electrical; see the spikes listed.`,
        }
      : null,
    spikeShare > 0.01
      ? { text: 'More than 1 % of the loaded readings are spikes: the force signal is not fit for use.', spoils: true }
      : null,
    plateau
      ? {
          text: `The force stood at its limit for ${plateau.count} readings: clipped, so the maximum counts as "at least".`,
          atLeast: true,
        }
      : null,
    endRemark(prepared, force, options),
    gapRemark(prepared, force),
    maximum.smoothed
      ? {
          text: `The force is noisy (${kN(maximum.noise_kN)} at the maximum): the maximum is the top of a fitted parabola, not the largest reading, which noise lifts.`,
        }
      : null,
    end - slack.end < 20
      ? { text: `Only ${end - slack.end + 1} readings lie in the loaded part: too few for more than a rough reading.` }
      : null,
    options.rig?.classPct === undefined
      ? {
          text: 'The class of the rig is not known: the uncertainty of the maximum holds only what the record itself shows.',
        }
      : null,
    resolution_kN !== null && resolution_kN > 0.005 * maximum.force_kN
      ? { text: `The force is recorded in steps of ${kN(resolution_kN)}, over 0.5 % of the maximum.` }
      : null,
    zeroAfter(prepared, parting?.after ?? null, maximum.force_kN),
  ];
}

/** Force after parting that is not zero: the zero was off, or has moved. */
function zeroAfter(prepared: Prepared, after: number | null, maximum: number): Remark | null {
  const { clean, noise } = prepared;
  if (after === null || clean.length - after < 20) return null;
  const level = meanBetween(clean, Math.floor((after + clean.length) / 2), clean.length);
  if (Math.abs(level) <= Math.max(0.002 * maximum, 3 * noise.overall)) return null;
  return {
    text: `After parting the force stands at ${kN(level)}, not at zero: the zero was off or has moved, or something still hangs on the rig.`,
  };
}

function travelRemarks(prepared: Prepared, travel: TravelPart, options: ReadOptions): (Remark | null)[] {
  const { travelFrom, compliance_mm_per_kN } = prepared;
  const share = travel.numbers.shareInsideRateLimits;
  return [
    travelFrom === null
      ? { text: 'There is no travel signal: stiffness, extensions and energies are not known.' }
      : null,
    travelFrom === 'table' && compliance_mm_per_kN === null
      ? { text: 'Extensions are travel of the table and hold the stretch of the rig, whose compliance is not known.' }
      : null,
    compliance_mm_per_kN === null
      ? null
      : { text: `The stretch of the rig (${compliance_mm_per_kN} mm/kN) was taken off the table travel.` },
    travelFrom !== null && travel.elastic === null
      ? { text: 'No elastic stretch was found: the force does not rise steadily with the travel.' }
      : null,
    travelFrom !== null && referenceLength(options) === null
      ? { text: 'No knee and no elongation in %: neither a gauge length nor links and pitch are given.' }
      : null,
    share !== null && share < 0.9
      ? {
          text: `Only ${(100 * share).toFixed(0)} % of the loaded time lies within the rate limits of the method: whoever pulled it must say whether it counts.`,
          // Mostly outside, the method was not followed; a valve that hesitated is for the engineer to judge.
          spoils: share < 0.5,
        }
      : null,
  ];
}

function samplingRemarks(prepared: Prepared, events: EventList): (Remark | null)[] {
  const { sampling, signals } = prepared;
  const untimed = signals.time_s === null;
  return [
    untimed
      ? {
          text: `The record has no time: rates are not known and events cannot be placed (${events.dips} dips were seen).`,
        }
      : null,
    sampling.coarseTime ? { text: 'The time is written too coarsely to tell neighbouring readings apart.' } : null,
    sampling.gaps.length > 0 ? { text: `The record has ${sampling.gaps.length} gaps in time.` } : null,
    sampling.repeats.length > 0
      ? { text: `${sampling.repeats.length} readings repeat the time of the one before.` }
      : null,
    events.dips > 200 ? { text: `Of ${events.dips} dips the 200 largest are listed.` } : null,
  ];
}

/**
 * Judges the record: valid unless spikes riddle it or it spends most of its loaded time outside the method's rate limits. A clipped
 * record, one that stops before parting or has a gap at the maximum stays valid as a bound: its maximum is "at least". (`agreedDrop_pct` makes it final.)
 */
export function judgeRecord(
  prepared: Prepared,
  force: ForcePart,
  travel: TravelPart,
  events: EventList,
  options: ReadOptions,
): RecordVerdict {
  const remarks = [
    ...samplingRemarks(prepared, events),
    ...forceRemarks(prepared, force, options),
    ...travelRemarks(prepared, travel, options),
  ].filter((remark) => remark !== null);
  return {
    valid: !remarks.some((remark) => remark.spoils),
    maximumIsAtLeast: remarks.some((remark) => remark.atLeast),
    notes: [...(prepared.signals.notes ?? []), ...remarks.map((remark) => remark.text)],
  };
}
