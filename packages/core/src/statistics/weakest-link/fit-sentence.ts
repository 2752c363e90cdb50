import type { WeibullGoodness } from './goodness-of-fit.ts';
import type { LengthModels } from './length-models.ts';
import type { PooledShape } from './pooled-shape.ts';
import type { FitOutcome } from './weibull-fit.ts';

/** Scatter of like pieces of a shape, about: 100 pi / sqrt(6) / shape, in per cent. */
function scatter(shape: number): string {
  return `${((100 * Math.PI) / Math.sqrt(6) / shape).toFixed(1)} %`;
}

/** What a fit says, for a reader who is no statistician. */
export function fitSentence(mode: string, { fit, reason }: FitOutcome): string {
  if (!fit) return `No law can be fitted to breaks in the ${mode}: ${reason}.`;
  const corrected =
    fit.correctedShape === null ? '' : `; allowing for so few breaks, rather ${scatter(fit.correctedShape)}`;
  const breaks = fit.breaks === 1 ? '1 break' : `${Number(fit.breaks.toFixed(1))} breaks`;
  return (
    `From ${breaks} in the ${mode} among ${fit.pieces} pieces: like pieces scatter by about ${scatter(fit.shape)} in this mode${corrected}, ` +
    `and a single link in three (1/e) would hold ${Number(fit.scale_kN.toPrecision(3))} kN.`
  );
}

/** What one shape for several products says. */
export function pooledShapeSentence(pooled: PooledShape): string {
  if (pooled.shape === null) return `No common scatter can be told: ${pooled.reason}.`;
  const products = pooled.scales_kN.filter((scale) => scale !== null).length;
  return `Taken together, ${pooled.breaks} breaks of ${products} products say that like pieces of one product scatter by about ${scatter(pooled.shape)}.`;
}

/** Whether longer pieces were weaker as the weakest-link law would have it. */
export function lengthModelsSentence({ againstPower, lengths }: LengthModels): string {
  if (!againstPower) {
    return lengths.length < 2
      ? 'All pieces are of one length: whether longer ones are weaker as the weakest link would have it was not tested.'
      : 'There are too few breaks at each length to test whether longer pieces are weaker as the weakest link would have it.';
  }
  const { pValue } = againstPower;
  return pValue < 0.05
    ? `Longer pieces are not weaker in the way the weakest link would have it (a chance of ${Number(pValue.toPrecision(1))} if they were).`
    : `Longer pieces are weaker much as the weakest link would have it (a difference like this has a chance of ${Number(pValue.toPrecision(2))}).`;
}

/** Whether the forces look like one Weibull law. */
export function goodnessSentence(goodness: WeibullGoodness | null, pieces: number): string {
  if (!goodness) return 'Whether the forces follow a Weibull law cannot be told from these pieces.';
  return goodness.significance < 0.05
    ? 'The forces do not look like one Weibull law: several sorts of link may be mixed.'
    : `Nothing speaks against a Weibull law, but ${pieces} pieces could hardly show it.`;
}
