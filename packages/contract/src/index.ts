export * from './finding.ts';
export * from './package/field.ts';
export * from './package/tables.ts';
