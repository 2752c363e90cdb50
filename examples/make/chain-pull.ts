import {
  advanceChain,
  type BreakPosition,
  type Chain,
  type ChainPull,
  elongation_pct,
  type JumpThatHappened,
  startChain,
  type Table,
} from '@provinghouse/rig/practice';

/** What truly happened, step by step, before any transducer saw it. */
export interface PullHistory {
  readonly step_s: number;
  readonly force_kN: Float64Array;
  readonly table_mm: Float64Array;
  /** Over the free links: table travel less what frame and grips took. */
  readonly extension_mm: Float64Array;
  readonly partedStep: number;
  /** Link counted from the fixed end; 0 for the grip. */
  readonly partedLink: number;
  readonly position: BreakPosition;
  readonly maximumStep: number;
  /** Plastic and elastic extension of the free links at parting over the sum of their pitches, %. */
  readonly elongation_pct: number;
  readonly stiffness_kN_per_mm: number;
  readonly jumps: readonly JumpThatHappened[];
}

const step_s = 0.01;
const longest_s = 240;

interface Course {
  readonly force: number[];
  readonly table: number[];
  readonly extension: number[];
}

/** Pulls a chain of the practice rig to destruction: table travel given. */
export function pullChain(chain: Chain, table: Table, after_s: number): PullHistory {
  const pull = startChain(chain, step_s);
  const course: Course = { force: [], table: [], extension: [] };
  const steps = Math.round(longest_s / step_s);
  for (let i = 0; i < steps; i++) {
    const time_s = i * step_s;
    const travel_mm = table.advance(time_s, step_s, pull.force_kN);
    advanceChain(pull, travel_mm, time_s);
    course.force.push(pull.force_kN);
    course.table.push(travel_mm);
    course.extension.push(travel_mm - chain.compliance_mm_per_kN * pull.force_kN - pull.gripSlip_mm);
    if (pull.parted) {
      runOn(course, table, i, after_s);
      return historyOf(pull, course, i);
    }
  }
  throw new Error(`the chain did not part within ${longest_s} s; the story asks for too strong a chain`);
}

/** Runs the table on for a moment after parting, as hands need time to close a valve. */
function runOn({ force, table: travel, extension }: Course, table: Table, partedStep: number, after_s: number): void {
  const last = extension[partedStep] ?? 0;
  for (let i = 1; i <= Math.round(after_s / step_s); i++) {
    const since_s = i * step_s;
    const running = table.advance((partedStep + i) * step_s, step_s, 0);
    travel.push(since_s < 0.8 ? running : (travel.at(-1) ?? running));
    force.push(ringing(force[partedStep] ?? 0, since_s));
    extension.push(last - 0.9 + 1.6 * Math.exp(-since_s / 0.15) * Math.cos(2 * Math.PI * 5 * since_s));
  }
}

function historyOf(pull: ChainPull, { force, table, extension }: Course, partedStep: number): PullHistory {
  return {
    step_s,
    force_kN: Float64Array.from(force),
    table_mm: Float64Array.from(table),
    extension_mm: Float64Array.from(extension),
    partedStep,
    partedLink: pull.parted?.link ?? 0,
    position: pull.parted?.zone.position ?? 'in grip',
    maximumStep: force.reduce((best, f, i) => (f > (force[best] ?? 0) ? i : best), 0),
    elongation_pct: elongation_pct(pull),
    stiffness_kN_per_mm: 1 / (pull.elastic_mm_per_kN - pull.chain.compliance_mm_per_kN),
    jumps: pull.happened,
  };
}

/** The frame rings for a few tenths of a second once the chain has gone. */
function ringing(before_kN: number, since_s: number): number {
  return 0.05 * before_kN * Math.exp(-since_s / 0.07) * Math.cos(2 * Math.PI * 13 * since_s);
}
