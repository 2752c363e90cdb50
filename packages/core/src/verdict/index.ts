export * from './judge.ts';
export * from './verdict.ts';
