import {
  gammaCdf,
  gammaUpper,
  gammaUpperQuantile,
  logGamma,
  normalCdf,
  normalDensity,
  normalUpper,
} from '../statistics/distribution/index.ts';
import type { ConformityLimits } from './conformance-probability.ts';
import { percent } from './conformity-sentence.ts';
import { evenEdges, panelIntegral } from './panel-integral.ts';

/** How the true values of such pieces are spread, known before the measurement. Gamma: for a quantity that cannot be below 0. */
export interface PriorSpread {
  readonly kind: 'normal' | 'gamma';
  readonly mean: number;
  readonly standardDeviation: number;
}

export interface GlobalRiskInput {
  readonly prior: PriorSpread;
  /** Of one measurement; 0 for a measurement without error. */
  readonly standardUncertainty: number;
  readonly limits: ConformityLimits;
  readonly acceptance: ConformityLimits;
}

/** Shares of all pieces made, not of those accepted. */
export interface GlobalRisk {
  /** Accepted although they do not conform. */
  readonly consumersRisk: number;
  /** Rejected although they conform. */
  readonly producersRisk: number;
  readonly conformingShare: number;
  readonly acceptedShare: number;
  /** Of the accepted pieces, those that do not conform; null where none is accepted. */
  readonly failingAmongAccepted: number | null;
  readonly method: string;
  readonly sentence: string;
}

/**
 * Global consumer's and producer's risk of an acceptance interval (JCGM 106:2012 9.5.2, equations 19 and 20), by numerical integration
 * of the prior times the chance of acceptance, a normal measurement taken.
 * @throws RangeError for a prior without spread, a gamma prior whose spread exceeds its mean, or no limit at all
 */
export function globalRisk(input: GlobalRiskInput): GlobalRisk {
  requireSound(input);
  const { limits } = input;
  const prior = priorOf(input.prior);
  const edges = edgesOf(input, prior);
  const accepted = acceptanceChance(input);
  const isConforming = (x: number) =>
    (limits.lower === null || x >= limits.lower) && (limits.upper === null || x <= limits.upper);
  const consumersRisk = panelIntegral((x) => (isConforming(x) ? 0 : prior.density(x) * accepted(x).yes), edges);
  const producersRisk = panelIntegral((x) => (isConforming(x) ? prior.density(x) * accepted(x).no : 0), edges);
  const conformingShare =
    1 -
    (limits.lower === null ? 0 : prior.below(limits.lower)) -
    (limits.upper === null ? 0 : prior.above(limits.upper));
  const acceptedShare = conformingShare - producersRisk + consumersRisk;
  return {
    consumersRisk,
    producersRisk,
    conformingShare,
    acceptedShare,
    failingAmongAccepted: acceptedShare > 0 ? consumersRisk / acceptedShare : null,
    method: 'Global risks, numerical integration over the prior (JCGM 106:2012 9.5.2)',
    sentence: `Of all such pieces ${percent(consumersRisk)} would be accepted though they do not conform, and ${percent(producersRisk)} rejected though they do.`,
  };
}

interface Prior {
  readonly density: (x: number) => number;
  readonly below: (x: number) => number;
  readonly above: (x: number) => number;
  readonly from: number;
  readonly to: number;
}

function priorOf({ kind, mean, standardDeviation: sd }: PriorSpread): Prior {
  if (kind === 'normal') {
    return {
      density: (x) => normalDensity((x - mean) / sd) / sd,
      below: (x) => normalCdf((x - mean) / sd),
      above: (x) => normalUpper((x - mean) / sd),
      from: mean - 12 * sd,
      to: mean + 12 * sd,
    };
  }
  const shape = (mean / sd) ** 2;
  const rate = mean / sd ** 2;
  return {
    density: (x) =>
      x <= 0 ? 0 : Math.exp((shape - 1) * Math.log(x) - rate * x + shape * Math.log(rate) - logGamma(shape)),
    below: (x) => gammaCdf(rate * x, shape),
    above: (x) => gammaUpper(rate * x, shape),
    from: 0,
    to: gammaUpperQuantile(1e-18, shape) / rate,
  };
}

/** Panels as fine as the prior is smooth, finer where the chance of acceptance falls off, and cut at each limit. */
function edgesOf(
  { prior: { standardDeviation }, standardUncertainty: u, limits, acceptance }: GlobalRiskInput,
  prior: Prior,
): number[] {
  const cuts = [limits.lower, limits.upper, acceptance.lower, acceptance.upper].filter((cut) => cut !== null);
  const falls = [acceptance.lower, acceptance.upper].flatMap((at) =>
    at === null || u === 0 ? [] : evenEdges(at - 10 * u, at + 10 * u, u),
  );
  const edges = [...evenEdges(prior.from, prior.to, standardDeviation / 2), ...cuts, ...falls];
  return edges.filter((edge) => edge >= prior.from && edge <= prior.to);
}

function acceptanceChance({ standardUncertainty: u, acceptance: { lower, upper } }: GlobalRiskInput) {
  return (x: number): { readonly yes: number; readonly no: number } => {
    const belowLower = lower === null ? 0 : normalCdf((lower - x) / u);
    const aboveUpper = upper === null ? 0 : normalUpper((upper - x) / u);
    const no = belowLower + aboveUpper;
    if (no <= 0.5 || lower === null || upper === null) {
      const yes =
        lower === null
          ? normalCdf(((upper ?? Infinity) - x) / u)
          : upper === null
            ? normalUpper((lower - x) / u)
            : 1 - no;
      return { yes, no };
    }
    // Far outside, the difference of the two tails on one side keeps its digits.
    const yes = x > upper ? normalCdf((upper - x) / u) - belowLower : normalUpper((lower - x) / u) - aboveUpper;
    return { yes: Math.max(0, yes), no };
  };
}

function requireSound({ prior, standardUncertainty, limits, acceptance }: GlobalRiskInput): void {
  const { mean, standardDeviation, kind } = prior;
  if (!(standardDeviation > 0 && Number.isFinite(standardDeviation) && Number.isFinite(mean)))
    throw new RangeError('a prior has a mean and a spread above 0');
  if (kind === 'gamma' && !(mean >= standardDeviation))
    throw new RangeError('a gamma prior has a mean not below its spread');
  if (!(standardUncertainty >= 0 && Number.isFinite(standardUncertainty)))
    throw new RangeError('a standard uncertainty is finite and not below 0');
  if (limits.lower === null && limits.upper === null) throw new RangeError('a risk needs a limit');
  for (const limit of [limits.lower, limits.upper, acceptance.lower, acceptance.upper])
    if (limit !== null && !Number.isFinite(limit)) throw new RangeError('a limit is a finite number, or null');
}

/** The acceptance limits that hold a global consumer's risk, and their price. */
export interface GuardForGlobalRisk {
  /** Inward positive; null where no guard band reaches the risk asked. */
  readonly guard: number | null;
  /** Guard over U = 2 u. */
  readonly multiplier: number | null;
  readonly acceptance: ConformityLimits;
  readonly risk: GlobalRisk | null;
}

/**
 * Guard band for a stated global consumer's risk (JCGM 106:2012 9.5.4). A risk that simple acceptance undercuts gives a guard band
 * below 0, that is room outside the limits, as far as 10 u.
 */
export function guardForGlobalRisk(
  input: Omit<GlobalRiskInput, 'acceptance'> & { readonly consumersRisk: number },
): GuardForGlobalRisk {
  const { limits, standardUncertainty: u, consumersRisk } = input;
  if (!(consumersRisk > 0 && consumersRisk < 1)) throw new RangeError('a risk lies between 0 and 1');
  if (!(u > 0)) throw new RangeError('a guard band is for a measurement with uncertainty');
  const at = (guard: number) => ({
    lower: limits.lower === null ? null : limits.lower + guard,
    upper: limits.upper === null ? null : limits.upper - guard,
  });
  const riskAt = (guard: number) => globalRisk({ ...input, acceptance: at(guard) });
  const half = limits.lower === null || limits.upper === null ? Infinity : (limits.upper - limits.lower) / 2;
  const guard = solve((g) => riskAt(g).consumersRisk <= consumersRisk, { no: -10 * u, yes: Math.min(10 * u, half) });
  if (guard === null) return { guard, multiplier: null, acceptance: at(0), risk: null };
  return { guard, multiplier: guard / (2 * u), acceptance: at(guard), risk: riskAt(guard) };
}

function solve(holds: (at: number) => boolean, from: { readonly no: number; readonly yes: number }): number | null {
  let { no, yes } = from;
  if (!holds(yes)) return null;
  if (holds(no)) return no;
  for (let i = 0; i < 50; i++) {
    const middle = (no + yes) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
