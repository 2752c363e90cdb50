export * from './break-question.ts';
export * from './tally.ts';
