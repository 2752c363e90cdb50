/** What is known of an instrument when it is checked. */
export interface CheckedInstrument {
  /** Smallest step it shows, in its unit. */
  readonly resolution: number;
  /** Class of ISO 7500-1 of a rig; null for anything else. */
  readonly class: number | null;
  /** Expanded uncertainty of the certificate in force, in its unit; null where none states one. */
  readonly expandedUncertainty: number | null;
}

export interface AllowedDeviation {
  /** Largest deviation from the reference value, in the instrument's unit. */
  readonly allowed: number;
  readonly origin: string;
}

/**
 * How far a check reading may be off before the instrument is in doubt. A rig: the error of indication of its class, so many per cent of
 * the value (ISO 7500-1:2018, Table 2). Anything else: the expanded uncertainty of its certificate and one step of its display (common
 * practice). Null where neither is known.
 */
export function allowedDeviation(instrument: CheckedInstrument, referenceValue: number): AllowedDeviation | null {
  const { class: rigClass, expandedUncertainty, resolution } = instrument;
  if (rigClass !== null)
    return {
      allowed: (rigClass / 100) * Math.abs(referenceValue),
      origin: `error of indication of class ${rigClass}: ${rigClass} % of the value (ISO 7500-1)`,
    };
  if (expandedUncertainty === null) return null;
  return {
    allowed: expandedUncertainty + resolution,
    origin: 'expanded uncertainty of the certificate and one step of the display (common practice)',
  };
}
