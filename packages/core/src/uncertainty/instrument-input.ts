import { estimated, evenlyWithin } from './input-distribution.ts';
import type { ModelInput } from './propagation.ts';

/** A calibration certificate, in the unit of the instrument. */
export interface Certificate {
  /** Its number. */
  readonly certificate: string;
  readonly expandedUncertainty: number;
  readonly coverageFactor: number;
}

/** A standard deviation of single readings, and how much stands behind it. */
export interface KnownScatter {
  readonly sd: number;
  readonly degreesOfFreedom: number;
  readonly source: string;
}

/** A result with its uncertainty, as one model hands it to the next. */
export interface KnownValue {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Null: taken as exact. */
  readonly degreesOfFreedom: number | null;
  readonly source: string;
}

/** The uncertainty of a certificate, U / k (JCGM 100:2008 4.3.3). */
export function certificateInput(certificate: Certificate, unit: string, name = 'calibration certificate'): ModelInput {
  const { expandedUncertainty, coverageFactor } = certificate;
  if (!(coverageFactor > 0)) throw new RangeError('the coverage factor of a certificate is above 0');
  return {
    name,
    unit,
    distribution: estimated(0, expandedUncertainty / coverageFactor),
    source: `certificate ${certificate.certificate}, U = ${expandedUncertainty} ${unit}, k = ${coverageFactor} (JCGM 100:2008 4.3.3)`,
  };
}

/** A reading shown in steps lies within half a step of what is shown (JCGM 100:2008 F.2.2.1). */
export function resolutionInput(step: number, unit: string, name = 'resolution'): ModelInput {
  return {
    name,
    unit,
    distribution: evenlyWithin(step / 2),
    source: `step of ${step} ${unit}, half a step either way (JCGM 100:2008 F.2.2.1)`,
  };
}

/** Scatter of a mean of `readings` readings (JCGM 100:2008 4.2.3, 4.2.4). */
export function scatterInput(
  scatter: KnownScatter,
  readings: number,
  about: { unit: string; name: string },
): ModelInput {
  return {
    ...about,
    distribution: estimated(0, scatter.sd / Math.sqrt(readings), scatter.degreesOfFreedom),
    source: `${scatter.source}${readings === 1 ? '' : `, over the root of ${readings}`} (JCGM 100:2008 4.2)`,
  };
}

/** A value that comes with its own uncertainty. */
export function knownInput(known: KnownValue, about: { readonly unit: string; readonly name: string }): ModelInput {
  return {
    ...about,
    distribution: estimated(known.value, known.standardUncertainty, known.degreesOfFreedom ?? Infinity),
    source: known.source,
  };
}

export function requireAbove0(facts: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(facts)) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} is a number above 0, not ${value}`);
  }
}
