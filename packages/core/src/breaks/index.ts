export * from './break-question.ts';
export * from './reader.ts';
export * from './tally.ts';
