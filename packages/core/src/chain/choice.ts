import type { GradeChoice } from './grade-selection.ts';
import type { SizeChoice } from './size-selection.ts';
import type { Provenance } from './specification.ts';
import type { ChosenStandard } from './standard-selection.ts';

/** Accuracy class of the length over links, for the standards that have two (DIN 764). */
export type LengthClass = 'A' | 'B';

/** Standard, grade and size together: what a value is looked up for. */
export interface Choice {
  readonly standard: ChosenStandard;
  readonly grade: GradeChoice;
  readonly size: SizeChoice;
  readonly lengthClass: LengthClass;
}

/** One number of the rulebook in its bench unit, with its place and provenance. */
export interface Finding {
  readonly value: number;
  readonly place: string;
  readonly provenance: Provenance;
}
