export * from './finding.ts';
export * from './ledger.ts';
export * from './package/index.ts';
