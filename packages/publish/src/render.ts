import type { Report, ReportDocument } from './document.ts';
import { reportSource } from './source.ts';
import { compilePdf } from './typst/compile.ts';

/**
 * Renders the report of a campaign as a PDF/A-2b.
 *
 * Same document, same bytes: the only date inside is the day of issue, the only fonts are those of the font package (they
 * go before fonts of the same name on the machine). Throws an InputError for a day of issue that is none; any other
 * failure is a fault of this program and throws an Error with the compiler's words.
 */
export function renderReport(document: ReportDocument): Report {
  const source = reportSource(document);
  return { ...compilePdf(source, document.issuedOn), source };
}
