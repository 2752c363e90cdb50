/** Where on a link a reading was taken. */
export type GaugingPosition =
  | 'leg' // plain leg, away from the weld
  | 'crown'
  | 'weld'
  | 'link' // the link as a whole: pitch and widths
  | 'piece'; // the piece as a whole: length over links

export type GaugingQuantity =
  | 'diameter'
  | 'weldDiameter'
  | 'pitch'
  | 'innerWidth'
  | 'outerWidth'
  | 'outerLength'
  | 'lengthOverLinks';

/** One reading of one instrument, in millimetres. */
export interface GaugingInput {
  readonly link: number | null;
  readonly position: GaugingPosition;
  readonly quantity: GaugingQuantity;
  /** Second reading at right angles and so on: 1, 2, ... */
  readonly direction: number;
  readonly value_mm: number;
  /** For `lengthOverLinks`: over how many links. */
  readonly overLinks: number | null;
  readonly instrument: string;
  readonly by: string;
}

/** What is known of the instrument behind a reading. */
export interface GaugingInstrument {
  readonly instrument: string;
  readonly resolution_mm: number;
  /** Expanded uncertainty of its calibration, and the factor it was stated with. */
  readonly calibrationUncertainty_mm: number | null;
  readonly coverageFactor: number;
}

/** All readings of one quantity on one piece. */
export interface QuantityGauging {
  readonly quantity: GaugingQuantity;
  /** For `lengthOverLinks`: over how many links; readings over different numbers of links are kept apart. */
  readonly overLinks: number | null;
  readonly readings: number;
  readonly mean_mm: number;
  readonly least_mm: number;
  readonly greatest_mm: number;
  /** Standard deviation of the readings; null for one reading, which has no scatter. */
  readonly sd_mm: number | null;
  readonly leastLink: number | null;
  readonly greatestLink: number | null;
  /** Standard uncertainty of one reading (calibration, resolution, repeat readings where taken). */
  readonly standardUncertainty_mm: number | null;
}

/** What the gauging of one piece says. */
export interface GaugingReading {
  readonly quantities: readonly QuantityGauging[];
  readonly meanDiameter_mm: number | null;
  /** Steel area of both legs, pi/4 d1 d2 per leg from the diameters at right angles; the mean over links. */
  readonly steelArea_mm2: number | null;
  readonly steelAreaUncertainty_mm2: number | null;
  readonly leastSteelArea_mm2: number | null;
  readonly nominalArea_mm2: number;
  /** Greatest difference of two diameters at one place. */
  readonly outOfRound_mm: number | null;
  readonly notes: readonly string[];
}
