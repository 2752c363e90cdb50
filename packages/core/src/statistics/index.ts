export { type RandomSource, seededRandom } from './random.ts';
export { type Summary, summarise } from './summary.ts';
