import { advanceChain, type ChainPull, elongation_pct, startChain, storedEnergy_J } from './chain-pull.ts';
import { hydraulicTable, type Table } from './hydraulic-table.ts';
import { type DrawnChain, drawChain, expectedStrength_kN, nominalLength_mm, rangeFor_kN } from './practice-chain.ts';
import type { PracticeOperator, PracticeOptions } from './practice-options.ts';
import { practiceStream } from './random.ts';
import { type Eased, type Hand, type ScriptedHand, scriptedHand, turnedHand } from './valve-hand.ts';

/** Step of the physics. Samples between steps lie on straight lines, so the course does not hang on the sample rate. */
export const step_s = 0.005;
/** After parting the operator needs this long to close the valve. */
const closing_s = 0.8;

/** State of the true pull at the end of one step. */
export interface MachineState {
  readonly time_s: number;
  readonly force_kN: number;
  readonly table_mm: number;
  readonly extension_mm: number;
  /** Set once the chain has parted. */
  readonly parting: Parting | null;
}

export interface Parting {
  readonly time_s: number;
  readonly force_kN: number;
  readonly extension_mm: number;
  readonly elongation_pct: number;
  readonly stored_J: number;
}

export interface Peak {
  readonly force_kN: number;
  readonly time_s: number;
}

/** Table, valve and chain together, a step at a time. */
export interface Machine {
  readonly chain: ChainPull;
  readonly drawn: DrawnChain;
  readonly step: () => MachineState;
  readonly turnValve: (speed_mm_per_s: number) => void;
  readonly maximum: () => Peak;
  readonly work_J: () => number;
  readonly parting: () => Parting | null;
  readonly hesitations: () => readonly Eased[];
}

/** Builds the machine of a practice pull; everything drawn hangs on the seed. */
export function practiceMachine(options: PracticeOptions): Machine {
  const drawn = drawChain(options);
  const pull = startChain(drawn.chain, step_s);
  const turned = turnedHand();
  const script = options.valve === 'closed' ? null : operatorOf(options, drawn.weakestStrength_kN);
  const valve: Valve = { hand: script ?? turned, closesAt_s: null };
  const table = tableOf(options, valve);
  let steps = 0;
  let maximum: Peak = { force_kN: 0, time_s: 0 };
  let work_J = 0;
  let state: MachineState = { time_s: 0, force_kN: 0, table_mm: 0, extension_mm: 0, parting: null };

  const step = (): MachineState => {
    const time_s = ++steps * step_s;
    const table_mm = table.advance(time_s, step_s, state.force_kN);
    advanceChain(pull, table_mm, time_s);
    const extension_mm = table_mm - drawn.chain.compliance_mm_per_kN * pull.force_kN - pull.gripSlip_mm;
    if (state.parting === null) work_J += 0.5 * (state.force_kN + pull.force_kN) * (table_mm - state.table_mm);
    if (pull.force_kN > maximum.force_kN) maximum = { force_kN: pull.force_kN, time_s };
    let parting = state.parting;
    if (pull.parted && parting === null) {
      const stored_J = storedEnergy_J(pull);
      parting = { time_s, force_kN: pull.force_kN, extension_mm, elongation_pct: elongation_pct(pull), stored_J };
      if (script && valve.hand === script) valve.closesAt_s = time_s + closing_s;
    }
    state = { time_s, force_kN: pull.force_kN, table_mm, extension_mm, parting };
    return state;
  };

  return {
    chain: pull,
    drawn,
    step,
    turnValve: (speed_mm_per_s) => {
      turned.turn(speed_mm_per_s);
      valve.hand = turned;
      valve.closesAt_s = null;
    },
    maximum: () => maximum,
    work_J: () => work_J,
    parting: () => state.parting,
    hesitations: () => script?.eased ?? [],
  };
}

interface Valve {
  hand: Hand;
  closesAt_s: number | null;
}

function tableOf(options: PracticeOptions, valve: Valve): Table {
  const rig = options.rig ?? {};
  const range_kN = rig.rangeMaximum_kN ?? rangeFor_kN(options.chain ?? {});
  const shut = { speed_mm_per_s: 0, kept: 1, isOpening: false };
  const hand: Hand = {
    order: (time_s, force_kN) =>
      valve.closesAt_s !== null && time_s > valve.closesAt_s ? shut : valve.hand.order(time_s, force_kN),
  };
  return hydraulicTable(hand, practiceStream(options.seed, 'table'), {
    sag_per_kN: (rig.sag_pct ?? 10) / 100 / range_kN,
    wander: rig.wander ?? 0.03,
    damping: rig.damping ?? 0.5,
  });
}

/** An operator who knows the chain's worth roughly, and sets a speed fit for its length. */
function operatorOf(options: PracticeOptions, strength_kN: number): ScriptedHand {
  const operator: PracticeOperator = options.valve === 'closed' ? {} : (options.valve ?? {});
  const length_mm = nominalLength_mm(options.chain ?? {});
  const expected_kN = Math.min(strength_kN, expectedStrength_kN(options.chain ?? {}));
  return scriptedHand(
    {
      approach_mm_per_s: (operator.approach_mm_per_min ?? Math.max(54, 0.45 * length_mm)) / 60,
      takeUp_mm_per_s: (operator.takeUp_mm_per_min ?? 0.125 * length_mm) / 60,
      main_mm_per_s: (operator.main_mm_per_min ?? 0.28 * length_mm) / 60,
      openFrom_kN: (operator.openFromShare ?? 0.6) * expected_kN,
      idle_s: operator.idle_s ?? 2,
      hesitations: [...(operator.hesitations ?? [])]
        .sort((a, b) => a.share - b.share)
        .map(({ share, lasts_s, keeps }) => ({ from_kN: share * strength_kN, lasts_s, keeps })),
    },
    practiceStream(options.seed, 'hand'),
  );
}
