export type { Report, ReportDocument } from './document.ts';
export { renderReport } from './render.ts';
export { reportSource } from './source.ts';
