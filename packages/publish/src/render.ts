import { fileURLToPath } from 'node:url';
import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler';
import type { Report, ReportDocument } from './document.ts';
import { reportSource } from './source.ts';
import { fontFiles } from './typst/font.ts';

/** PDF/A-2b (ISO 19005-2): fonts and metadata inside, nothing that a later reader could lack. */
const pdfStandard = 'a-2b';

/** The only folder a source could read from; no report does. */
const workspace = fileURLToPath(new URL('./typst/', import.meta.url));

/**
 * Renders the report of a campaign as a PDF/A-2b.
 *
 * Same document, same bytes: the only date inside is the day of issue, the only fonts are those of the font package (they
 * go before fonts of the same name on the machine). Throws an InputError for a day of issue that is none; any other
 * failure is a fault of this program and throws an Error with the compiler's words.
 */
export function renderReport(document: ReportDocument): Report {
  const source = reportSource(document);
  const compiler = NodeCompiler.create({ workspace, fontArgs: [{ fontBlobs: [...fontFiles()] }] });
  const set = compileWith(compiler, source);
  const creationTimestamp = Date.parse(`${document.issuedOn}T00:00:00Z`) / 1000;
  const pdf = compiler.pdf(set, { pdfStandard, creationTimestamp });
  const pages = set.numOfPages;
  // The compiler's memory of earlier documents is global and grows with each report.
  compiler.evictCache(0);
  return { pdf: new Uint8Array(pdf), source, pages };
}

function compileWith(compiler: NodeCompiler, source: string): NodeTypstDocument {
  const outcome = compiler.compile({ mainFileContent: source });
  if (outcome.result === null || outcome.hasError()) {
    const said = outcome.takeDiagnostics()?.shortDiagnostics ?? [];
    throw new Error(`the report could not be set: ${JSON.stringify(said)}`);
  }
  return outcome.result;
}
