export { type BringIn, type BringInResult, bringIn } from './bring-in.ts';
export { type Export, type ExportResult, exportPackage, packForReader } from './export.ts';
export { faultLine, type PackageFault } from './fault.ts';
export { type PackageLimits, packageLimits } from './limit.ts';
export { type OwnStandards, readOwnStandards } from './own-standard.ts';
export { type PackageReading, type ReadOptions, readPackage } from './read.ts';
export { exampleRows, type Template, type TemplateResult, writeTemplate } from './template.ts';
export { type PackageContent, packageFiles } from './write.ts';
