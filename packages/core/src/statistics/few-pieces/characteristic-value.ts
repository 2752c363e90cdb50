import { normalQuantile, studentQuantile } from '../distribution/index.ts';
import { plainNumber, plainPieces } from './plain-number.ts';
import { type FewValues, fewnessDoubts, type Sample, sampleOf } from './sample.ts';
import table from './tables/en1990-kn.json' with { type: 'json' };

export interface CharacteristicValue {
  readonly n: number;
  readonly mean: number | null;
  readonly sd: number | null;
  /** Coefficient of variation used, a share of the mean; known beforehand or that of the sample. */
  readonly variation: number | null;
  readonly variationIsKnown: boolean;
  /** The factor used: the printed one where n is in the table, else the formula. */
  readonly factor: number | null;
  readonly factorIsTabulated: boolean;
  /** The factor by the prediction formula; the printed table is rounded, down mostly. */
  readonly formulaFactor: number | null;
  /** The value that 5 % of pieces are expected to fall short of. */
  readonly characteristic: number | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/** The factor of the prediction formula behind the table: normal where the variation is known, else Student's t; null for an unknown variation of one value. */
export function characteristicFormulaFactor(n: number, variationIsKnown: boolean): number | null {
  if (n < 1 || (n < 2 && !variationIsKnown)) return null;
  const quantile = variationIsKnown ? normalQuantile(0.95) : studentQuantile(0.95, n - 1);
  return quantile * Math.sqrt(1 + 1 / n);
}

/** The printed factor; null where the table has no such n. */
export function characteristicTableFactor(n: number, variationIsKnown: boolean): number | null {
  const rows = variationIsKnown ? table.known : table.unknown;
  return rows.find((row) => row.n === n)?.k ?? null;
}

/**
 * The 5 % characteristic value X_k = m (1 - k_n V) of a normal quantity (EN 1990 Annex D, D7.2).
 * `knownVariation` is a coefficient of variation known from earlier production, as a share (0.04, not 4);
 * without it the table begins at three values, and for fewer the characteristic value is null.
 */
export function characteristicValue(
  few: FewValues,
  options: { readonly knownVariation?: number; readonly unit?: string } = {},
): CharacteristicValue {
  const { knownVariation, unit } = options;
  if (knownVariation !== undefined && !(knownVariation > 0 && knownVariation < 1)) {
    throw new RangeError(`a known coefficient of variation is a share between 0 and 1, not ${knownVariation}`);
  }
  const sample = sampleOf(few);
  const variationIsKnown = knownVariation !== undefined;
  const formulaFactor = characteristicFormulaFactor(sample.n, variationIsKnown);
  const tabulated = characteristicTableFactor(sample.n, variationIsKnown);
  const factor = tabulated ?? formulaFactor;
  const variation = knownVariation ?? ownVariation(sample);
  const { n, mean, sd } = sample;
  const common = {
    n,
    mean,
    sd,
    variation,
    variationIsKnown,
    formulaFactor,
    factorIsTabulated: tabulated !== null,
    method,
  };
  const obstacle = obstacleOf(sample, variationIsKnown);
  if (obstacle !== null || mean === null || variation === null || factor === null) {
    const sentence = `No characteristic value follows from ${plainPieces(n)}. ${obstacle ?? ''}`.trim();
    return { ...common, factor: null, characteristic: null, doubts: [obstacle ?? ''], sentence };
  }
  const characteristic = mean * (1 - factor * variation);
  const known = variationIsKnown ? ' and a scatter known beforehand' : '';
  const sentence = `One piece in twenty is expected to fall short of ${plainNumber(characteristic, unit)}, judged by ${plainPieces(n)}${known}.`;
  return { ...common, factor, characteristic, doubts: doubtsOf(n, tabulated, characteristic), sentence };
}

const method = `Characteristic value X_k = m (1 - k_n V), ${table.source}`;

function ownVariation({ mean, sd }: Sample): number | null {
  return mean === null || sd === null || mean <= 0 ? null : sd / mean;
}

function obstacleOf({ n, mean, obstacle }: Sample, variationIsKnown: boolean): string | null {
  if (mean !== null && mean <= 0)
    return 'The mean is not above zero, so that a coefficient of variation means nothing.';
  if (n === 0 || !variationIsKnown) {
    return obstacle ?? (n < 3 ? 'The table begins at three values unless the variation is known beforehand.' : null);
  }
  return null;
}

function doubtsOf(n: number, tabulated: number | null, characteristic: number): readonly string[] {
  const between = tabulated === null ? [`The table has no row for n = ${n}; the factor is that of its formula.`] : [];
  const useless = characteristic <= 0 ? ['The value lies at or below zero: so few pieces promise nothing.'] : [];
  return [...fewnessDoubts(n), ...between, ...useless];
}
