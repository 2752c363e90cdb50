/** What is held of the shape before a piece is pulled: its logarithm is normal. */
export interface ShapePrior {
  readonly medianShape: number;
  /** Standard deviation of ln(shape). */
  readonly logSd: number;
  /** Where it comes from, in words for the reader. */
  readonly source: string;
}

/** Priors by mode, with one for every mode not named. */
export interface ShapePriors {
  readonly byMode: Readonly<Record<string, ShapePrior>>;
  readonly otherwise: ShapePrior;
}

/** pi / sqrt(6): the standard deviation of ln(-ln U), which makes the scatter of a Weibull law about 1.28 / shape. */
const LOG_SCATTER = Math.PI / Math.sqrt(6);

const bar: ShapePrior = {
  medianShape: 35,
  logSd: 0.6,
  source:
    'assumed: forces of like pieces of steel bar chain scatter by 2 to 5 % (common practice), a shape between 25 and 60, widened so that the bounds hold at both ends',
};

const joint: ShapePrior = {
  medianShape: 20,
  logSd: 0.6,
  source: 'assumed: welds scatter nearly twice as much as bar, and nobody knows how much',
};

/** Default priors: the bar as even as the trade knows it, the welds less so. Not from any product under test. */
export const tradePriors: ShapePriors = { byMode: { bar }, otherwise: joint };

/** The prior of one mode. */
export function priorOf(priors: ShapePriors, mode: string): ShapePrior {
  return priors.byMode[mode] ?? priors.otherwise;
}

/** One sentence that states a prior beside the answer. */
export function priorSentence(mode: string, prior: ShapePrior): string {
  const at = (sds: number) => prior.medianShape * Math.exp(sds * prior.logSd);
  const scatter = (shape: number) => ((100 * LOG_SCATTER) / shape).toFixed(1);
  return (
    `Shape for ${mode} before any pull: ${at(0).toFixed(0)}, two times in three between ${at(-1).toFixed(0)} and ${at(1).toFixed(0)} ` +
    `(scatter of like pieces ${scatter(at(1))} to ${scatter(at(-1))} %); ${prior.source}.`
  );
}
