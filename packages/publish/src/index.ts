export type { Report, ReportDocument } from './document.ts';
export { labelText } from './label/address.ts';
export { type LabelDocument, type LabelSheet, type PieceLabel, sheetMeasures } from './label/document.ts';
export { type Labels, renderLabels } from './label/render.ts';
export { renderReport } from './render.ts';
export { reportSource } from './source.ts';
