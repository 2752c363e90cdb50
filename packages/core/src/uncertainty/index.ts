export * from './combine.ts';
export * from './rounding.ts';
