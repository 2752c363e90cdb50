import { InputError, type WatchSample } from '@provinghouse/core';
import { elongation_pct, storedEnergy_J } from './chain-pull.ts';
import { rangeFor_kN } from './practice-chain.ts';
import { type Machine, type MachineState, practiceMachine, step_s } from './practice-machine.ts';
import { checkPracticeOptions, type PracticeOptions } from './practice-options.ts';
import { modeOf, type PracticeTruth, type TransducerTruth } from './practice-truth.ts';
import { practiceStream, type Random } from './random.ts';
import { indicated_kN, lagged_kN, ringing_kN, rounded } from './transducer.ts';

/** A practice pull in the making. It has no clock of its own: time passes only by `advance`. */
export interface PracticeSession {
  readonly rate_Hz: number;
  readonly hasGauge: boolean;
  /**
   * Lets this much time pass and gives the samples that fell into it, sample k at k / rate_Hz, the first at 0.
   * The samples do not depend on how the time is divided into calls.
   */
  readonly advance: (seconds: number) => WatchSample[];
  /** Sets the valve: the table speed it would give unloaded, 0 to 10 000 mm/min. From then on no operator touches it. */
  readonly turnValve: (mm_per_min: number) => void;
  readonly time_s: () => number;
  readonly hasParted: () => boolean;
  readonly truth: () => PracticeTruth;
}

/** Starts a practice pull; throws `InputError` on options out of range. */
export function startPractice(options: PracticeOptions): PracticeSession {
  checkPracticeOptions(options);
  const machine = practiceMachine(options);
  const transducer = transducerOf(options);
  const rate_Hz = options.rate_Hz ?? 100;
  const recorder = recorderOf(options, transducer);
  const course = courseOf(machine, transducer.lag_s);
  let now_s = 0;
  let taken = 0;
  return {
    rate_Hz,
    hasGauge: options.rig?.hasGauge ?? true,
    advance: (seconds) => {
      if (!(seconds >= 0 && seconds <= 86_400)) throw badTime(seconds);
      now_s += seconds;
      const samples: WatchSample[] = [];
      // A nanosecond of grace: k / rate and the sum of the strides differ in their last digits.
      for (; taken / rate_Hz <= now_s + 1e-9; taken++) samples.push(recorder(course, taken / rate_Hz));
      return samples;
    },
    turnValve: (mm_per_min) => {
      if (!(mm_per_min >= 0 && mm_per_min <= 10_000)) throw badValve(mm_per_min);
      machine.turnValve(mm_per_min / 60);
    },
    time_s: () => now_s,
    hasParted: () => machine.chain.parted !== null,
    truth: () => truthOf(options.seed, machine, transducer),
  };
}

function badTime(seconds: number): InputError {
  return new InputError('practice/time', `practice rig: time cannot advance by ${seconds} s; give 0 to 86400`, {
    seconds,
  });
}

function badValve(mm_per_min: number): InputError {
  return new InputError(
    'practice/valve',
    `practice rig: the valve cannot be set to ${mm_per_min} mm/min; give 0 to 10000`,
    {
      mm_per_min,
    },
  );
}

function transducerOf(options: PracticeOptions): TransducerTruth {
  const rig = options.rig ?? {};
  const rangeMaximum_kN = rig.rangeMaximum_kN ?? rangeFor_kN(options.chain ?? {});
  return {
    rangeMaximum_kN,
    gainError_pct: rig.gainError_pct ?? 0.15,
    zero_kN: rig.zero_kN ?? 0.001 * rangeMaximum_kN,
    zeroDrift_kN_per_s: rig.zeroDrift_kN_per_s ?? 0,
    noise_kN: rig.noise_kN ?? 0.00015 * rangeMaximum_kN,
    resolution_kN: rig.resolution_kN ?? 0.0001 * rangeMaximum_kN,
    lag_s: rig.lag_s ?? 0.004,
  };
}

interface Moment {
  readonly force_kN: number;
  readonly table_mm: number;
  readonly extension_mm: number;
}

/** The pull as a function of time: lagged force, table, extension. Asked for times that never fall. */
type Course = (time_s: number) => Moment;

function courseOf(machine: Machine, lag_s: number): Course {
  let last: MachineState = { time_s: 0, force_kN: 0, table_mm: 0, extension_mm: 0, parting: null };
  let next = last;
  let lagged = 0;
  const laggedAt = (time_s: number): number => {
    const since_s = time_s - last.time_s;
    const from_kN = last.parting ? 0 : last.force_kN;
    const slope_kN_per_s = last.parting ? 0 : (next.force_kN - last.force_kN) / step_s;
    return lagged_kN(lag_s, { output_kN: lagged, from_kN, slope_kN_per_s }, since_s);
  };
  return (time_s) => {
    while (next.time_s < time_s - 1e-9) {
      lagged = next === last ? 0 : laggedAt(next.time_s);
      last = next;
      next = machine.step();
    }
    const share = next === last ? 0 : Math.min(1, (time_s - last.time_s) / step_s);
    const between = (from: number, to: number) => from + (to - from) * share;
    const table_mm = between(last.table_mm, next.table_mm);
    const { parting } = last;
    if (parting === null) {
      return {
        force_kN: next === last ? 0 : laggedAt(time_s),
        table_mm,
        extension_mm: between(last.extension_mm, next.extension_mm),
      };
    }
    const since_s = time_s - parting.time_s;
    return {
      force_kN: laggedAt(time_s) + ringing_kN(parting.force_kN, since_s),
      table_mm,
      extension_mm: parting.extension_mm - recoil_mm(since_s),
    };
  };
}

/** A gauge left on the recoiling end: it swings a few times and comes to rest short of where it was. */
function recoil_mm(since_s: number): number {
  return 0.9 * (1 - Math.exp(-since_s / 0.15) * Math.cos(2 * Math.PI * 5 * since_s));
}

function recorderOf(options: PracticeOptions, transducer: TransducerTruth) {
  const rig = options.rig ?? {};
  const random = practiceStream(options.seed, 'noise');
  const travelNoise_mm = rig.travelNoise_mm ?? 0.004;
  const travelResolution_mm = rig.travelResolution_mm ?? 0.01;
  const hasGauge = rig.hasGauge ?? true;
  const slow = { ...transducer, gainError: transducer.gainError_pct / 100 };
  const travel = (value_mm: number) => rounded(value_mm + noise(random, travelNoise_mm), travelResolution_mm);
  return (course: Course, time_s: number): WatchSample => {
    const { force_kN, table_mm, extension_mm } = course(time_s);
    const shown_kN = indicated_kN(slow, { force_kN, time_s, noise_kN: noise(random, transducer.noise_kN) });
    const range_kN = transducer.rangeMaximum_kN;
    return {
      time_s,
      force_kN: rounded(Math.min(range_kN, Math.max(-range_kN, shown_kN)), transducer.resolution_kN),
      table_mm: travel(table_mm),
      extension_mm: hasGauge ? travel(extension_mm) : null,
    };
  };
}

function noise(random: Random, sd: number): number {
  return sd === 0 ? 0 : random.normal(0, sd);
}

function truthOf(seed: number, machine: Machine, transducer: TransducerTruth): PracticeTruth {
  const { chain, drawn } = machine;
  const maximum = machine.maximum();
  const parted = chain.parted;
  const links_mm_per_kN = chain.elastic_mm_per_kN - drawn.chain.compliance_mm_per_kN;
  const parting = machine.parting();
  return {
    isPractice: true,
    seed,
    maximumForce_kN: maximum.force_kN,
    timeAtMaximum_s: maximum.time_s,
    partingForce_kN: parting?.force_kN ?? null,
    timeAtParting_s: parting?.time_s ?? null,
    mode: parted ? modeOf(parted.zone.position) : null,
    position: parted?.zone.position ?? null,
    partedLink: parted?.link ?? null,
    weakestStrength_kN: drawn.weakestStrength_kN,
    strengths_kN: drawn.chain.links.map((link) => link.zone.strength_kN),
    elongation_pct: parting?.elongation_pct ?? elongation_pct(chain),
    stiffnessOfLinks_kN_per_mm: 1 / links_mm_per_kN,
    energy: {
      work_J: machine.work_J(),
      stored_J: parting?.stored_J ?? storedEnergy_J(chain),
      dissipated_J: chain.dissipated_J,
    },
    jumps: [...chain.happened],
    hesitations: [...machine.hesitations()],
    transducer,
  };
}
