export * from './package/field.ts';
export * from './package/tables.ts';
export * from './finding.ts';
