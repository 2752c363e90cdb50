export * from './agreement/index.ts';
export * from './comparison/index.ts';
export * from './distribution/index.ts';
export * from './few-pieces/index.ts';
export { type RandomSource, seededRandom } from './random.ts';
export { type Summary, summarise } from './summary.ts';
export * from './weakest-link/index.ts';
