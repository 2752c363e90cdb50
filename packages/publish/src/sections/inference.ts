import type { ProductDecision, ProductFinding } from '@provinghouse/contract';
import { literal, type Typst } from '../typst/escape.ts';
import { bullets, caption, note, paragraph } from '../typst/table.ts';
import { verdictMark } from '../words/piece.ts';
import { sentences } from '../words/sentence.ts';

/** What the counted pieces of a product let one say of the pieces nobody pulled, in sentences, with their methods below. */
export function inferenceLines({ product, inference }: ProductFinding): Typst[] {
  const { mean, tolerance, characteristic, outlier, normality, meanDecision, boundDecision } = inference;
  const told = [mean, tolerance, characteristic, outlier, normality];
  const doubts = [...new Set([...told.flatMap((one) => one.doubts), ...(boundDecision?.doubts ?? [])])];
  return [
    caption(literal(`What so few pieces of ${product} let one say`)),
    bullets(told.map((one) => literal(one.sentence))),
    ...decisionLine('Its mean against the minimum', meanDecision),
    ...decisionLine('95 % of its pieces against the minimum', boundDecision),
    note(literal(sentences([...doubts, `Methods: ${[...new Set(told.map((one) => one.method))].join('; ')}`]))),
  ];
}

function decisionLine(name: string, decision: ProductDecision | null): Typst[] {
  if (decision === null) return [];
  return [
    paragraph(literal(`${name}:`), 'h(5pt)', verdictMark(decision.verdict), 'h(5pt)', literal(decision.sentence)),
  ];
}
