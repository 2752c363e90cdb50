import { fileURLToPath } from 'node:url';
import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler';
import type { Typst } from './escape.ts';
import { fontFiles } from './font.ts';

/** PDF/A-2b (ISO 19005-2): fonts and metadata inside, nothing that a later reader could lack. */
const pdfStandard = 'a-2b';

/** The only folder a source could read from; nothing that is published does. */
const workspace = fileURLToPath(new URL('./', import.meta.url));

/** A source as it came out on paper. */
export interface CompiledPdf {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/**
 * Sets a source as a PDF/A-2b. Same source, same bytes: the only date inside is the day given, the only fonts are those of
 * the font package (they go before fonts of the same name on the machine).
 *
 * @param day YYYY-MM-DD, a day of the calendar
 * @throws Error with the compiler's words: a source that cannot be set is a fault of this program
 */
export function compilePdf(source: Typst, day: string): CompiledPdf {
  const compiler = NodeCompiler.create({ workspace, fontArgs: [{ fontBlobs: [...fontFiles()] }] });
  const set = compileWith(compiler, source);
  const creationTimestamp = Date.parse(`${day}T00:00:00Z`) / 1000;
  const pdf = compiler.pdf(set, { pdfStandard, creationTimestamp });
  const pages = set.numOfPages;
  // The compiler's memory of earlier documents is global and grows with each report.
  compiler.evictCache(0);
  return { pdf: new Uint8Array(pdf), pages };
}

function compileWith(compiler: NodeCompiler, source: Typst): NodeTypstDocument {
  const outcome = compiler.compile({ mainFileContent: source });
  if (outcome.result === null || outcome.hasError()) {
    const said = outcome.takeDiagnostics()?.shortDiagnostics ?? [];
    throw new Error(`the document could not be set: ${JSON.stringify(said)}`);
  }
  return outcome.result;
}
