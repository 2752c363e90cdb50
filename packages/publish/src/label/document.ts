/** What the label of one piece shows beside its code. In a blind campaign everything but the code is left null. */
export interface PieceLabel {
  readonly piece: string;
  /** Free links. */
  readonly links: number | null;
  readonly nominalSize_mm: number | null;
}

/** Labels on paper: A4 with three columns of eight (70 x 36 mm), or one label a page for a label printer (62 x 29 mm). */
export type LabelSheet = 'a4-3x8' | 'single-62x29';

/** Everything a run of labels is made from. The same document gives the same bytes. */
export interface LabelDocument {
  /** Code of the campaign. */
  readonly campaign: string;
  /** One label each, in this order. */
  readonly labels: readonly PieceLabel[];
  readonly sheet: LabelSheet;
  /** Where the record is served, such as `http://bench:8080`; null where a phone is to read the bare code of the piece. */
  readonly origin: string | null;
  /** Labels of the first sheet that were used before: the run begins behind them. 0 where left out; A4 sheets only. */
  readonly used?: number | undefined;
  /** Corner ticks to cut by, for plain paper. */
  readonly withCuttingMarks?: boolean | undefined;
  /** YYYY-MM-DD; only inside the file, not printed. */
  readonly printedOn: string;
}

/** Measures of a sheet, mm. */
export interface SheetMeasures {
  readonly page: { readonly width: number; readonly height: number };
  readonly label: { readonly width: number; readonly height: number };
  readonly columns: number;
  readonly rows: number;
  /** From the top of the page to the first label. */
  readonly top: number;
  /** Side of the code for phones, its quiet zone included. */
  readonly code: number;
  /** From the edge of a label to what is printed on it: printers do not reach the edge of a page. */
  readonly inset: number;
}

export const sheetMeasures: Readonly<Record<LabelSheet, SheetMeasures>> = {
  'a4-3x8': {
    page: { width: 210, height: 297 },
    label: { width: 70, height: 36 },
    columns: 3,
    rows: 8,
    top: 4.5,
    code: 29,
    inset: 3.5,
  },
  'single-62x29': {
    page: { width: 62, height: 29 },
    label: { width: 62, height: 29 },
    columns: 1,
    rows: 1,
    top: 0,
    code: 26,
    inset: 1.5,
  },
};
