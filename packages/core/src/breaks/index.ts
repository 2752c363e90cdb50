export * from './tally.ts';
