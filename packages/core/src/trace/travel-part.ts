import { coarsen } from './coarse.ts';
import type { Elastic } from './elastic.ts';
import { findElastic } from './elastic.ts';
import { energyBetween } from './energy.ts';
import type { ForcePart } from './force-part.ts';
import { findKnee } from './knee.ts';
import type { ReadOptions } from './options.ts';
import type { Prepared } from './prepared.ts';
import { findRates, shareInside } from './rates.ts';
import type { TraceReading } from './reading.ts';

type TravelNumbers = Pick<
  TraceReading,
  | 'stiffness_kN_per_mm'
  | 'stiffnessInterval95_kN_per_mm'
  | 'kneeForce_kN'
  | 'tableSpeed_mm_per_min'
  | 'forceRate_kN_per_s'
  | 'extensionAtMaximum_mm'
  | 'extensionAtParting_mm'
  | 'plasticExtension_mm'
  | 'totalUltimateElongation_pct'
  | 'energyToMaximum_J'
  | 'energyToParting_J'
  | 'meanStressAtMaximum_N_per_mm2'
  | 'stressRate_N_per_mm2_per_s'
  | 'shareInsideRateLimits'
  | 'timeAtEndOfSlack_s'
  | 'travelOrigin_mm'
  | 'travelFrom'
>;

/** What force and travel say together. */
export interface TravelPart {
  readonly numbers: TravelNumbers;
  readonly elastic: Elastic | null;
}

/** The length that strains refer to: the gauge length, else the sum of the inside lengths of the links. */
export function referenceLength(options: ReadOptions): number | null {
  if (options.gaugeLength_mm !== undefined) return options.gaugeLength_mm;
  return options.links !== undefined && options.pitch_mm !== undefined ? options.links * options.pitch_mm : null;
}

function finite(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}

/** First sample in [from, to] at or above a level. */
function firstAt(force: Float64Array, from: number, to: number, level: number): number {
  let i = from;
  while (i < to && (force[i] as number) < level) i++;
  return i;
}

/** Elastic stretch in samples: from the travel when there is one, else between 20 % and 50 % of the maximum. */
function elasticSpan(
  prepared: Prepared,
  force: ForcePart,
  found: { elastic: Elastic; block: number } | null,
): { from: number; to: number } {
  const { clean, slack } = prepared;
  const start = slack.end;
  if (found) return { from: start + found.elastic.from * found.block, to: start + found.elastic.to * found.block - 1 };
  const peak = force.maximum.sample;
  const level = (share: number): number => firstAt(clean, start, peak, share * force.maximum.force_kN);
  return { from: level(0.2), to: level(0.5) };
}

/** Total ultimate elongation: extension at parting over the sum of the inside lengths (or the gauge length), % (EN 818-1 terms, memory). */
function elongation(extension: number | null, length: number | null): number | null {
  return extension === null || length === null ? null : (extension / length) * 100;
}

/** Work up to the maximum and, going on from there, up to parting. */
function energies({ clean, travel_mm }: Prepared, { maximum, parting }: ForcePart) {
  if (!travel_mm) return { energyToMaximum_J: null, energyToParting_J: null };
  const toMaximum = energyBetween(clean, travel_mm, { from: 0, to: maximum.sample });
  const onward = { from: maximum.sample, to: parting?.last ?? maximum.sample, before_J: toMaximum };
  return {
    energyToMaximum_J: toMaximum,
    energyToParting_J: parting && energyBetween(clean, travel_mm, onward),
  };
}

/** Stiffness, knee, extensions from the toe-corrected origin, energies, rates and stresses. */
export function readTravel(prepared: Prepared, force: ForcePart, options: ReadOptions): TravelPart {
  const { clean, slack, signals, travel_mm } = prepared;
  const { maximum, parting, end } = force;
  const coarse = coarsen({ force_kN: clean, travel_mm }, slack.end, maximum.sample);
  const elastic = coarse && findElastic(coarse, maximum.force_kN);
  const length = referenceLength(options);
  const offset_mm = length === null ? null : (length * (options.offset_pct ?? 0.2)) / 100;
  const kneeUpTo = elastic && offset_mm !== null ? coarsen({ force_kN: clean, travel_mm }, slack.end, end) : null;
  const span = elasticSpan(prepared, force, elastic && coarse ? { elastic, block: coarse.block } : null);
  const rateInput = {
    time_s: signals.time_s,
    force_kN: clean,
    table_mm: signals.table_mm,
    loaded: { from: slack.end, to: end },
    elastic: span,
  };
  const rates = findRates(rateInput);
  const origin = elastic?.origin_mm ?? null;
  const extension = (i: number): number | null =>
    travel_mm && origin !== null ? finite((travel_mm[i] as number) - origin) : null;
  const atParting = parting ? extension(parting.last) : null;
  const area = options.area_mm2 ?? null;
  return {
    elastic,
    numbers: {
      stiffness_kN_per_mm: elastic?.stiffness_kN_per_mm ?? null,
      stiffnessInterval95_kN_per_mm: elastic?.interval95_kN_per_mm ?? null,
      kneeForce_kN: elastic && kneeUpTo && offset_mm !== null ? findKnee(kneeUpTo, elastic, offset_mm) : null,
      ...rates,
      extensionAtMaximum_mm: extension(maximum.sample),
      extensionAtParting_mm: atParting,
      plasticExtension_mm:
        atParting !== null && elastic && parting
          ? atParting - (clean[parting.last] as number) / elastic.stiffness_kN_per_mm
          : null,
      totalUltimateElongation_pct: elongation(atParting, length),
      ...energies(prepared, force),
      meanStressAtMaximum_N_per_mm2: area === null ? null : (maximum.force_kN * 1000) / area,
      stressRate_N_per_mm2_per_s:
        area === null || rates.forceRate_kN_per_s === null ? null : (rates.forceRate_kN_per_s * 1000) / area,
      shareInsideRateLimits: shareInside(rateInput, options.rateLimits),
      timeAtEndOfSlack_s: slack.end > 0 ? (signals.time_s?.[slack.end] ?? null) : null,
      travelOrigin_mm: origin,
      travelFrom: prepared.travelFrom,
    },
  };
}
