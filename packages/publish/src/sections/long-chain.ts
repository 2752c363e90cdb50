import type { ProductFinding } from '@provinghouse/contract';
import type { LongChainFinding } from '@provinghouse/core';
import { type LongChainCurve, longChainCurve, longChainOf, weibullFigure } from '@provinghouse/figure';
import type { ReportDocument } from '../document.ts';
import { onPaper } from '../figure/paper.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { caption, note, paragraph, section, subsection, table, whole } from '../typst/table.ts';
import { asWritten, decimals, significant } from '../words/number.ts';

/** What short pieces say about long chain, product by product: the answer, what it rests on, and the figures behind it. */
export function longChainSection(document: ReportDocument): Typst {
  const { products, pieces } = document.finding;
  const shown = products.flatMap((product) => {
    const curve = longChainOf(product, pieces);
    return curve === null ? [] : [{ product, curve }];
  });
  if (shown.length === 0) return '';
  return [
    // The heading must not stay behind on a page that has no room for the first product.
    '#need(430)',
    section('What the pieces say about long chain'),
    paragraph(
      literal(
        'A chain breaks at its weakest link, so a long chain breaks at less than a short piece of it. The law of each break mode is fitted by one link; a break in one mode is an “at least” for the others.',
      ),
    ),
    ...shown.flatMap(({ product, curve }, index) => [
      ...(index === 0 ? [] : ['#need(330)']),
      ...productFigures(product, curve),
    ]),
  ].join('\n');
}

function productFigures(product: ProductFinding, curve: LongChainCurve): Typst[] {
  const { finding } = curve;
  return [
    subsection(product.product),
    ...(finding.warning === null ? [] : [paragraph(`strong(${literal(finding.warning)})`)]),
    paragraph(literal(finding.sentence)),
    caption(literal(`Breaking force of ${product.product} against length of chain`)),
    onPaper((setting) => longChainCurve(curve, setting)),
    note(
      literal(
        'Solid lines are carried by the pieces, dashed ones rest on the Weibull form beyond the longest piece, dotted ones on the assumed shape as well; the words stand below the axis. Strong lines are bounds, thin ones estimates. Pieces of one length stand side by side.',
      ),
    ),
    ...lengthTable(finding),
    ...weibull(product, finding),
  ];
}

function lengthTable({ lengths, inputs }: LongChainFinding): Typst[] {
  const first = lengths[0];
  if (first === undefined) return [];
  const sure = `${asWritten(100 * inputs.confidence)} % sure`;
  return [
    table(
      [
        { heading: 'Length', unit: 'm', align: 'right' },
        { heading: 'Links', align: 'right' },
        { heading: 'Half hold more than', unit: 'kN', align: 'right' },
        ...first.exceeded.flatMap(({ survival }) => [
          { heading: `${asWritten(100 * survival)} % hold more`, unit: 'kN, estimate', align: 'right' as const },
          { heading: `${asWritten(100 * survival)} % hold more`, unit: `kN, ${sure}`, align: 'right' as const },
        ]),
        { heading: 'Governs', unit: 'share of breaks', width: '1fr' },
      ],
      lengths.map((chain) => [
        literal(asWritten(chain.length_m)),
        literal(String(chain.links)),
        literal(significant(chain.median_kN)),
        ...chain.exceeded.flatMap((one) => [literal(significant(one.estimate_kN)), literal(significant(one.bound_kN))]),
        literal(governs(chain.shares[0])),
      ]),
    ),
  ];
}

function governs(share: { readonly mode: string; readonly share: number } | undefined): string {
  if (share === undefined) return 'nothing broke';
  return share.mode === 'any' ? 'not read' : `${share.mode}, ${decimals(100 * share.share, 0)} %`;
}

function weibull(product: ProductFinding, finding: LongChainFinding): Typst[] {
  if (finding.plots.length === 0) return [];
  return whole([
    caption(literal(`Weibull plot of ${product.product} by break mode`)),
    onPaper((setting) => weibullFigure({ product: product.product, finding }, setting)),
    note(
      literal(
        'Each break stands where its rank among all pieces puts it, by one link. Line: the fitted law, solid where breaks lie, dashed beyond; band: 90 %. Thin lines: the laws of the other modes. Dotted across: where half of the chains of that length have parted.',
      ),
    ),
  ]);
}
