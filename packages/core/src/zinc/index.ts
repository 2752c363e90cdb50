export * from './survey.ts';
