import type { Kept } from './entry.ts';

/** Cutting of a sample into pieces; their codes are the record's to give. */
export interface CutRequest {
  /** As it is named on screen: by its neutral name while the campaign is blind. */
  readonly sample: string;
  /** How many pieces are cut now. */
  readonly count: number;
  /** Free links of each between the grips. */
  readonly links: number;
  /** What the callipers will touch; null where it is not known yet. */
  readonly gaugedOver: 'bare steel' | 'zinc' | null;
  readonly note: string | null;
  /** How many pieces the sample had when this was asked: the same request sent again is known by it. */
  readonly piecesBefore: number;
  readonly who: string;
  readonly why?: string | null;
}

export interface KeptCut extends Kept {
  /** Codes of the pieces, in the order of their tags. */
  readonly pieces: readonly string[];
}
