import { type CompiledPdf, compilePdf } from '../typst/compile.ts';
import type { Typst } from '../typst/escape.ts';
import type { LabelDocument } from './document.ts';
import { labelSource } from './source.ts';

/** Labels as they are printed. */
export interface Labels extends CompiledPdf {
  readonly source: Typst;
}

/**
 * Labels of pieces as a PDF: the code of the piece in large letters, the campaign, and a QR Code a phone reads. Nothing else is
 * printed than what the document holds, so a blind campaign gives null for what must not be known. Print at 100 %.
 *
 * @throws InputError for what `labelSource` refuses
 */
export function renderLabels(document: LabelDocument): Labels {
  const source = labelSource(document);
  return { ...compilePdf(source, document.printedOn), source };
}
