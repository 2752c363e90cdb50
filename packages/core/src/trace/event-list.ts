import { findDips } from './dips.ts';
import type { ForcePart } from './force-part.ts';
import { quantileOf } from './order-statistic.ts';
import { findPauses } from './pauses.ts';
import type { Prepared } from './prepared.ts';
import type { TraceEvent } from './reading.ts';

/** Events in order of time, and what could not be listed. */
export interface EventList {
  readonly list: readonly TraceEvent[];
  /** Dips and slips found, also when without a time they cannot be listed. */
  readonly dips: number;
}

const MOST_LISTED = 200;
/** Time after the sudden loss in which the force is taken to have fallen to its lowest. */
const SETTLED_S = 0.5;

function plain(kind: TraceEvent['kind'], time_s: number, force_kN: number, drop_kN: number | null = null): TraceEvent {
  return { kind, time_s, force_kN, drop_kN, regained: null };
}

function gapsAndRepeats(prepared: Prepared, force: ForcePart, time: Float64Array): TraceEvent[] {
  const { sampling, clean, slack } = prepared;
  const loaded = (i: number): boolean => i > slack.end && i <= (force.parting?.after ?? force.end);
  const at = (kind: 'gap' | 'repeat') => (i: number) => plain(kind, time[i - 1] as number, clean[i - 1] as number);
  return [...sampling.gaps.filter(loaded).map(at('gap')), ...sampling.repeats.filter(loaded).map(at('repeat'))];
}

/** The largest dips when there are more than can be listed. */
function largestFirst(events: readonly TraceEvent[]): readonly TraceEvent[] {
  if (events.length <= MOST_LISTED) return events;
  return [...events].sort((a, b) => (b.drop_kN ?? 0) - (a.drop_kN ?? 0)).slice(0, MOST_LISTED);
}

function ending(prepared: Prepared, force: ForcePart, time: Float64Array): TraceEvent {
  const { clean } = prepared;
  const last = clean.length - 1;
  if (!force.parting) return plain('end of record', time[last] as number, clean[last] as number);
  const before = clean[force.parting.last] as number;
  let low = Number.POSITIVE_INFINITY;
  for (let i = force.parting.after; i <= last; i++) {
    low = Math.min(low, clean[i] as number);
    if ((time[i] as number) > (time[force.parting.after] as number) + SETTLED_S) break;
  }
  return {
    kind: 'parted',
    time_s: time[force.parting.last] as number,
    force_kN: before,
    drop_kN: before - low,
    regained: false,
  };
}

/**
 * All events of a pull in order of time: dips, slips, pauses, clipping, gaps, repeats, and how the record ends. Of more than 200 dips the largest are
 * listed. A record without a time lists none, since an event is known by its time; its dips are counted all the same.
 */
export function listEvents(prepared: Prepared, force: ForcePart): EventList {
  const { clean, slack, noise, resolution_kN, sampling, signals } = prepared;
  const time = signals.time_s ?? Float64Array.from(clean, (_, i) => i);
  const span = { force_kN: clean, time_s: time, from: slack.end, to: force.end };
  const maximum_kN = force.maximum.force_kN;
  const noise_kN = Math.max(noise.overall, force.maximum.noise_kN, quantileOf(noise.byStretch, 0.9) / 1.5);
  const dips = findDips({
    ...span,
    noise_kN,
    resolution_kN,
    maximum_kN,
    step_s: signals.time_s ? (sampling.step_s ?? 1) : 1,
  });
  if (!signals.time_s) return { list: [], dips: dips.length };
  const pauses = findPauses({
    ...span,
    to: signals.table_mm ? force.end : force.maximum.sample,
    table_mm: signals.table_mm,
    noise_kN,
    maximum_kN,
  });
  const plateau = force.plateau
    ? [plain('plateau at range limit', time[force.plateau.from] as number, clean[force.plateau.from] as number)]
    : [];
  const others = [...pauses, ...plateau, ...gapsAndRepeats(prepared, force, time), ending(prepared, force, time)];
  const list = [...largestFirst(dips), ...others].sort((a, b) => a.time_s - b.time_s);
  return { list, dips: dips.length };
}
