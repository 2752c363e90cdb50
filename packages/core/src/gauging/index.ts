export { takeOffZinc } from './bare-steel.ts';
export { type ExpectationInputs, type ExpectedInterval, expectedInterval } from './expected-interval.ts';
export { gaugePiece, type PieceReadings } from './piece-gauging.ts';
export { gaugeQuantities } from './quantity-gauging.ts';
export { type QuestionCode, type QuestionInputs, type ReadingQuestion, readingQuestions } from './question.ts';
export { quantityWord } from './question-words.ts';
export type * from './reading.ts';
export { readingDoubts } from './reading-doubt.ts';
export { type ReadingSide, readingSide, type SideInputs } from './reading-side.ts';
export {
  type ReadingUncertainty,
  type Repeatability,
  readingUncertainty,
  repeatabilityOf,
} from './reading-uncertainty.ts';
export {
  type GaugingPlace,
  gaugingSchedule,
  lengthsToGauge,
  placeKey,
  quantitiesToGauge,
  type ScheduleInputs,
} from './schedule.ts';
export { type SteelArea, steelArea } from './steel-area.ts';
export { type StrengthInputs, type StrengthSplit, standardGrades, strengthSplit } from './strength-split.ts';
