export {
  type BootstrapOutcome,
  type BootstrapPlan,
  bootstrapForces,
  bootstrapLowerBound,
  bootstrapMethod,
} from './bootstrap.ts';
export { anyMode, type BreakModeFinding } from './break-mode.ts';
export {
  type ChainForces,
  type ChainUnderLoad,
  chainForces,
  type ModeLaw,
  type ModeShare,
  pieceQuantile,
  pieceSurvival,
} from './chain-law.ts';
export { type ChainLength, type ExceededForce, exceedances, type HoldingChance, linksIn } from './chain-length.ts';
export type { DataReach } from './data-reach.ts';
export { fitSentence, goodnessSentence, lengthModelsSentence, pooledShapeSentence } from './fit-sentence.ts';
export { type WeibullGoodness, weibullGoodness } from './goodness-of-fit.ts';
export { compareLengthModels, type LengthModel, type LengthModels, type RatioTest } from './length-models.ts';
export {
  type LongChainAsked,
  type LongChainFinding,
  type LongChainLength,
  longChain,
  type PulledLength,
} from './long-chain.ts';
export { type ModeRecord, modeRecord } from './mode-record.ts';
export { breakModeOf, type PulledPiece } from './piece.ts';
export { type PlottedBreak, type PlottedBreaks, plottingPositions } from './plotting-position.ts';
export { fitPooledShape, type PooledShape, priorFromPooledShape } from './pooled-shape.ts';
export { type ModePosterior, modePosterior, posteriorMethod } from './posterior.ts';
export type { PriorFreeForce } from './prior-free-bound.ts';
export {
  type ChainQuantile,
  profileMethod,
  quantileProfileInterval,
  scaleProfileInterval,
  shapeProfileInterval,
} from './profile-interval.ts';
export { type RankLine, rankLine } from './rank-line.ts';
export { correctedShape, shapeBiasMethod, unbiasingFactor } from './shape-bias.ts';
export { priorSentence, type ShapePrior, type ShapePriors, tradePriors } from './shape-prior.ts';
export {
  type FitOutcome,
  fitWeibull,
  likelihoodMethod,
  type WeibullFit,
  waldInterval,
} from './weibull-fit.ts';
export type { PlottedLine, WeibullPlot } from './weibull-plot.ts';
