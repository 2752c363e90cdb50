import { basisSentence } from './basis-sentence.ts';
import { type Basis, type BasisValue, basisCoverage } from './basis-value.ts';
import { requireCount } from './sample.ts';
import table from './tables/weibull-basis.json' with { type: 'json' };

/** A two-parameter Weibull fit of n values by maximum likelihood, none of them censored. */
export interface WeibullFit {
  readonly n: number;
  readonly shape: number;
  readonly scale: number;
}

/** The closed form for the factors V_A and V_B, meant for n of 16 or more (MIL-HDBK-17-1F, Vol. 1, Tables 8.5.8 and 8.5.9). */
export function weibullBasisFormulaFactor(n: number, basis: Basis): number {
  if (basis === 'B') return 3.803 + Math.exp(1.79 - 0.516 * Math.log(n) + 5.1 / n);
  return 6.649 + Math.exp(2.55 - 0.526 * Math.log(n) + 4.76 / n);
}

/** The factor V: printed for n of 10 to 15, by the closed form above, null below 10. */
export function weibullBasisFactor(n: number, basis: Basis): number | null {
  if (n >= 16) return weibullBasisFormulaFactor(n, basis);
  return table.rows.find((row) => row.n === n)?.[basis] ?? null;
}

/**
 * Basis value of a Weibull quantity: the fractile q of the fit lowered by exp(-V / (shape root n)) (MIL-HDBK-17-1F, Vol. 1, 8.3.4.2).
 * Below ten values there is no factor and the value is null. A shape or scale at or below 0 is misuse.
 */
export function weibullBasis(
  { n, shape, scale }: WeibullFit,
  { basis, unit }: { readonly basis: Basis; readonly unit?: string },
): BasisValue {
  requireCount(n);
  if (!(shape > 0 && scale > 0)) throw new RangeError(`shape and scale lie above 0, not ${shape} and ${scale}`);
  const factor = weibullBasisFactor(n, basis);
  const method = `${basis}-basis value of the Weibull form (MIL-HDBK-17-1F, Vol. 1, 8.3.4.2)`;
  if (factor === null) {
    const reason = 'The factors of the Weibull form begin at ten values.';
    return {
      basis,
      n,
      value: null,
      factor,
      method,
      doubts: [reason],
      sentence: basisSentence({ basis, n, value: null, reason }),
    };
  }
  const fractile = scale * (-Math.log(basisCoverage(basis))) ** (1 / shape);
  const value = fractile * Math.exp(-factor / (shape * Math.sqrt(n)));
  return { basis, n, value, factor, method, doubts: [], sentence: basisSentence({ basis, n, value, unit }) };
}
