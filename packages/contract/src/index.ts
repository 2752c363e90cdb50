export * from './brief.ts';
export * from './entry.ts';
export * from './finding.ts';
export * from './ledger.ts';
export * from './live.ts';
export * from './package/index.ts';
export * from './rig-desk.ts';
export * from './wire-test.ts';
