import { rulebook } from '../chain/rulebook.ts';

/** Largest permissible relative values of a class of force-measuring machine, in per cent. */
export interface ForceClass {
  readonly class: number;
  /** Error of indication, +/-. */
  readonly indication_pct: number;
  /** Range of the errors of three runs. */
  readonly repeatability_pct: number;
  readonly reversibility_pct: number;
  readonly zero_pct: number;
  /** Resolution over the lowest force of the range. */
  readonly resolution_pct: number;
}

/** Classes of ISO 7500-1:2018, Table 2: memory, as the rulebook marks them. */
export const forceClasses: readonly ForceClass[] = rulebook.general.machineAccuracy.classes.rows.map((row) => {
  const at = (column: string) => row[rulebook.general.machineAccuracy.classes.columns.indexOf(column)] ?? Number.NaN;
  return {
    class: at('class'),
    indication_pct: at('indicationError'),
    repeatability_pct: at('repeatability'),
    reversibility_pct: at('reversibility'),
    zero_pct: at('zeroError'),
    resolution_pct: at('resolution'),
  };
});

export const forceClassSource = 'ISO 7500-1:2018 Table 2 (memory)';

/** Largest permissible values of a class of extensometer: the per cent or the length counts, whichever is greater. */
export interface ExtensionClass {
  readonly class: number;
  readonly gaugeLength_pct: number;
  readonly resolution_pct: number;
  readonly resolution_um: number;
  readonly bias_pct: number;
  readonly bias_um: number;
}

/** Classes of ISO 9513:2012, Table 2: memory. */
export const extensionClasses: readonly ExtensionClass[] = [
  { class: 0.2, gaugeLength_pct: 0.2, resolution_pct: 0.1, resolution_um: 0.2, bias_pct: 0.2, bias_um: 0.6 },
  { class: 0.5, gaugeLength_pct: 0.5, resolution_pct: 0.25, resolution_um: 0.5, bias_pct: 0.5, bias_um: 1.5 },
  { class: 1, gaugeLength_pct: 1, resolution_pct: 0.5, resolution_um: 1, bias_pct: 1, bias_um: 3 },
  { class: 2, gaugeLength_pct: 2, resolution_pct: 1, resolution_um: 2, bias_pct: 2, bias_um: 6 },
];

export const extensionClassSource = 'ISO 9513:2012 Table 2 (memory)';

/** The class by its number; null where the standard has none such. */
export function forceClassOf(number: number): ForceClass | null {
  return forceClasses.find((candidate) => candidate.class === number) ?? null;
}

export function extensionClassOf(number: number): ExtensionClass | null {
  return extensionClasses.find((candidate) => candidate.class === number) ?? null;
}

/** Largest error of an extension of a class, mm: the per cent of it or the length of the table, whichever is greater. */
export function extensionErrorOf(known: ExtensionClass, extension_mm: number): number {
  return Math.max((known.bias_pct / 100) * Math.abs(extension_mm), known.bias_um / 1000);
}

/**
 * Least force that a resolution may measure in a class: resolution over force must not exceed the class's share, so 400 steps in class
 * 0.5, 200 in class 1, 100 in class 2, 67 in class 3.
 */
export function leastForceOfClass(known: ForceClass, resolution_kN: number): number {
  return resolution_kN / (known.resolution_pct / 100);
}
