/** Quantities a chain specification can limit. Units are fixed per quantity: see {@link quantityUnits}. */
export type Quantity =
  | 'diameter'
  | 'weldDiameter'
  | 'pitch'
  | 'innerWidth'
  | 'outerWidth'
  | 'outerLength'
  | 'lengthOverLinks'
  | 'breakingForce'
  | 'proofForce'
  | 'workingLoadLimit'
  | 'elongation'
  | 'massPerMetre'
  | 'bendDeflection';

export const quantityUnits = {
  diameter: 'mm',
  weldDiameter: 'mm',
  pitch: 'mm',
  innerWidth: 'mm',
  outerWidth: 'mm',
  outerLength: 'mm',
  lengthOverLinks: 'mm',
  breakingForce: 'kN',
  proofForce: 'kN',
  workingLoadLimit: 't',
  elongation: '%',
  massPerMetre: 'kg/m',
  bendDeflection: 'mm',
} as const satisfies Record<Quantity, string>;

export const quantityNames = {
  diameter: 'material diameter',
  weldDiameter: 'weld diameter',
  pitch: 'pitch (inside length)',
  innerWidth: 'inside width',
  outerWidth: 'outside width',
  outerLength: 'outside length of a link',
  lengthOverLinks: 'length over links (sum of pitches)',
  breakingForce: 'breaking force',
  proofForce: 'proof force',
  workingLoadLimit: 'working load limit',
  elongation: 'total ultimate elongation',
  massPerMetre: 'mass per metre',
  bendDeflection: 'bend deflection',
} as const satisfies Record<Quantity, string>;

/** Why a number may be less than certain. Shown wherever the number is used. */
export type Flag = 'memory' | 'inference' | 'suspect' | 'conflict' | 'derived';

export interface Citation {
  readonly id: string;
  readonly kind: string;
  readonly text: string;
}

/** Where a limit comes from and how far it can be trusted. */
export interface Provenance {
  readonly citations: readonly Citation[];
  /** A second page states the same number (pages may copy each other). */
  readonly crossChecked: boolean;
  readonly flags: readonly Flag[];
  /** Other values published for the same cell. */
  readonly alternatives: readonly { readonly value: number; readonly citation: string }[];
  readonly note: string | null;
}

/** One requirement of a specification for one size and grade. `lower`/`upper` are null on an open side. */
export interface Limit {
  readonly quantity: Quantity;
  readonly unit: string;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly nominal: number | null;
  /** For `lengthOverLinks`: over how many links. */
  readonly links: number | null;
  /** The requirement in words. */
  readonly statement: string;
  readonly standard: string;
  readonly edition: string;
  /** Table or rule within the rulebook entry, e.g. `table loads, d = 8` or `rule elongation`. */
  readonly place: string;
  readonly provenance: Provenance;
}

/** All that a standard (or an own rule) asks of one size and grade. */
export interface Specification {
  /** e.g. `EN 818-3, grade 4, 8 mm` */
  readonly title: string;
  readonly standard: string;
  readonly edition: string;
  readonly grade: string | null;
  readonly nominalSize_mm: number;
  /** A to D as in the rulebook's confidence key. */
  readonly confidence: string;
  /** Mean stress over both legs at the minimum breaking force; null where the standard defines none. */
  readonly gradeStress_N_per_mm2: number | null;
  readonly limits: readonly Limit[];
}
