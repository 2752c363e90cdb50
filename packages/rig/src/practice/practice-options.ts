import { InputError } from '@provinghouse/core';
import type { Jump } from './chain-pull.ts';

/** A chain to practise on. What is left out takes the value named. */
export interface PracticeChain {
  /** Free links, 1 to 500; 5. */
  readonly links?: number;
  /** Nominal bar diameter; 8. */
  readonly size_mm?: number;
  /** Inside length of a link; three times the size. */
  readonly pitch_mm?: number;
  /** Mean stress over both legs at which a link gives way; 460. */
  readonly strength_N_per_mm2?: number;
  /** Coefficient of variation of the links' strength; 1.5. */
  readonly spread_pct?: number;
  /** Share of links (0 to 1) whose weld, or the bar beside it, is weaker than the bar; 0.05. */
  readonly weldShare?: number;
  /** Plastic elongation at which the bulk of a link would have hardened fully; 30. */
  readonly uniformElongation_pct?: number;
  /** Travel before the chain takes load; 3. */
  readonly slack_mm?: number;
  /** Strength of the gripped end over that of the weakest link, below 1 where the jaw nicks the bar; null: sound. */
  readonly gripStrength?: number | null;
  /** Sudden lengthenings, placed by the share of the weakest strength; two links seating unless said. */
  readonly jumps?: readonly PracticeJump[];
}

export interface PracticeJump {
  readonly kind: Jump['kind'];
  readonly share: number;
  readonly by_mm: number;
}

/** The rig and its force transducer. What is left out takes the value named. */
export interface PracticeRig {
  /** Reading at which the recorder clips; the least of 10, 20, 50, 100 ... kN above 1.5 times the expected strength. */
  readonly rangeMaximum_kN?: number;
  /** Error of indication; 0.15. */
  readonly gainError_pct?: number;
  /** Zero offset; 0.1 % of the range. */
  readonly zero_kN?: number;
  readonly zeroDrift_kN_per_s?: number;
  /** Standard deviation of the noise on the force; 0.015 % of the range. */
  readonly noise_kN?: number;
  /** Step of the display; 0.01 % of the range. 0: none. */
  readonly resolution_kN?: number;
  /** First-order lag of the transducer's amplifier; 0.004. */
  readonly lag_s?: number;
  /** Stretch of frame and grips; 0.011. */
  readonly compliance_mm_per_kN?: number;
  /** Noise and step of the table and extension readings; 0.004 and 0.01. */
  readonly travelNoise_mm?: number;
  readonly travelResolution_mm?: number;
  /** A gauge on the piece gives an extension; true. */
  readonly hasGauge?: boolean;
  /** Wander of the table speed, relative, per square root of a second (settles near 1.7 times that); 0.03. */
  readonly wander?: number;
  /** Speed lost to leakage at the end of the range; 10. */
  readonly sag_pct?: number;
  /** Damping of the table's swing after the valve was turned, 0.2 (swings far) to 1 (not at all); 0.5. */
  readonly damping?: number;
}

/** An operator's way with the valve. Speeds left out follow from the length of the chain. */
export interface PracticeOperator {
  readonly approach_mm_per_min?: number;
  readonly takeUp_mm_per_min?: number;
  readonly main_mm_per_min?: number;
  /** Share of the weakest strength at which the valve is opened to the main speed; 0.6. */
  readonly openFromShare?: number;
  readonly idle_s?: number;
  readonly hesitations?: readonly { readonly share: number; readonly lasts_s: number; readonly keeps: number }[];
}

export interface PracticeOptions {
  /** Any whole number: the same seed and options give the same pull, digit for digit. */
  readonly seed: number;
  readonly chain?: PracticeChain;
  readonly rig?: PracticeRig;
  /** An operator by the book; or `closed`: the valve is shut until somebody turns it. */
  readonly valve?: PracticeOperator | 'closed';
  /** Samples a second, above 0 to 10 000; 100. */
  readonly rate_Hz?: number;
}

interface Range {
  readonly low: number;
  readonly high: number;
}

const ranges: Readonly<Record<string, Range>> = {
  'chain.links': { low: 1, high: 500 },
  'chain.size_mm': { low: 2, high: 100 },
  'chain.pitch_mm': { low: 4, high: 1000 },
  'chain.strength_N_per_mm2': { low: 50, high: 1500 },
  'chain.spread_pct': { low: 0, high: 15 },
  'chain.weldShare': { low: 0, high: 1 },
  'chain.uniformElongation_pct': { low: 1, high: 80 },
  'chain.slack_mm': { low: 0, high: 500 },
  'chain.gripStrength': { low: 0.1, high: 2 },
  'rig.rangeMaximum_kN': { low: 0.1, high: 1e5 },
  'rig.gainError_pct': { low: -20, high: 20 },
  'rig.zero_kN': { low: -1e4, high: 1e4 },
  'rig.zeroDrift_kN_per_s': { low: -100, high: 100 },
  'rig.noise_kN': { low: 0, high: 1e4 },
  'rig.resolution_kN': { low: 0, high: 1e4 },
  'rig.lag_s': { low: 0, high: 10 },
  'rig.compliance_mm_per_kN': { low: 0, high: 10 },
  'rig.travelNoise_mm': { low: 0, high: 10 },
  'rig.travelResolution_mm': { low: 0, high: 10 },
  'rig.wander': { low: 0, high: 0.3 },
  'rig.sag_pct': { low: 0, high: 90 },
  'rig.damping': { low: 0.2, high: 1 },
  'valve.approach_mm_per_min': { low: 0.01, high: 1e4 },
  'valve.takeUp_mm_per_min': { low: 0.01, high: 1e4 },
  'valve.main_mm_per_min': { low: 0.01, high: 1e4 },
  'valve.openFromShare': { low: 0, high: 1 },
  'valve.idle_s': { low: 0, high: 3600 },
  rate_Hz: { low: 1e-3, high: 1e4 },
};

/** Refuses what the practice rig cannot build, naming the option and what it takes. */
export function checkPracticeOptions(options: PracticeOptions): void {
  if (!Number.isSafeInteger(options.seed)) refuse('seed', options.seed, 'a whole number');
  if (!Number.isInteger(options.chain?.links ?? 1)) refuse('chain.links', options.chain?.links, 'a whole number');
  const valve = options.valve === 'closed' ? {} : (options.valve ?? {});
  const groups: Readonly<Record<string, object>> = { chain: options.chain ?? {}, rig: options.rig ?? {}, valve };
  for (const [name, { low, high }] of Object.entries(ranges)) {
    const [group = '', key = ''] = name.includes('.') ? name.split('.') : ['', name];
    const holder = group === '' ? options : (groups[group] ?? {});
    const value: unknown = Reflect.get(holder, key);
    if (value === undefined || value === null) continue;
    if (typeof value !== 'number' || !(value >= low && value <= high)) refuse(name, value, `${low} to ${high}`);
  }
}

function refuse(option: string, value: unknown, wanted: string): never {
  throw new InputError('practice/option', `practice rig: ${option} is ${String(value)}; give ${wanted}`, {
    option,
    value,
  });
}
