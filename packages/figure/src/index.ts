export {
  type BreakingForceDots,
  breakingForceDots,
  type DotUse,
  type PieceDot,
  type ProductDots,
  type ToleranceMark,
} from './breaking-force-dots.ts';
export { breakingForceDotsTable } from './breaking-force-table.ts';
export { type BudgetBars, type BudgetPart, budgetBars, budgetBarsTable, budgetOfMeasured } from './budget-bars.ts';
export {
  type ComparedInterval,
  type ComparisonIntervals,
  comparisonExtent,
  comparisonIntervals,
  comparisonIntervalsTable,
} from './comparison-intervals.ts';
export { type ControlChartFigure, controlChartFigure, controlChartTable } from './control-chart.ts';
export {
  budgetOf,
  dotsOf,
  intervalsOf,
  longChainOf,
  type PieceInFinding,
  type ProductInFinding,
} from './finding-data.ts';
export { type LongChainCurve, longChainCurve } from './long-chain-curve.ts';
export { longChainCurveTable } from './long-chain-table.ts';
export { element } from './sheet/element.ts';
export { type FigureSetting, type Ink, inkOf, type Theme } from './sheet/setting.ts';
export { csvOf, type FigureCell, type FigureColumn, type FigureTable, shownCells } from './sheet/table.ts';
export {
  type OverlaidRule,
  type OverlaidTop,
  type OverlaidTrace,
  type OverlayAxis,
  type TraceOverlay,
  traceOverlay,
  traceOverlayPoints,
  traceOverlayTable,
} from './trace-overlay.ts';
export { type WeibullFigure, weibullFigure, weibullFigureTable } from './weibull-plot.ts';
