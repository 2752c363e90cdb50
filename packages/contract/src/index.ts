export * from './finding.ts';
export * from './package/index.ts';
