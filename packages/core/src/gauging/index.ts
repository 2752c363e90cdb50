export { takeOffZinc } from './bare-steel.ts';
export { gaugePiece, type PieceReadings } from './piece-gauging.ts';
export { gaugeQuantities } from './quantity-gauging.ts';
export type * from './reading.ts';
export { readingDoubts } from './reading-doubt.ts';
export {
  type ReadingUncertainty,
  type Repeatability,
  readingUncertainty,
  repeatabilityOf,
} from './reading-uncertainty.ts';
export { type SteelArea, steelArea } from './steel-area.ts';
export { type StrengthInputs, type StrengthSplit, standardGrades, strengthSplit } from './strength-split.ts';
