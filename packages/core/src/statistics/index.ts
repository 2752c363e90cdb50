export * from './summary.ts';
