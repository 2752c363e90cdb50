import { adherenceWords, type ZincSurvey } from '@provinghouse/core';
import type { ReportDocument } from '../document.ts';
import { codeColumn, codeName, codeText } from '../typst/code.ts';
import { literal, type Typst } from '../typst/escape.ts';
import { note, paragraph, section, type TableRow, table } from '../typst/table.ts';
import { absent, rounded, significant } from '../words/number.ts';

/** Zinc by product, with its pieces below: thickness before the pull, behaviour after it. */
export function zincSection(document: ReportDocument): Typst {
  const { products, pieces, campaign } = document.finding;
  const rows: TableRow[] = products.flatMap((product) => {
    if (product.zinc === null) return [];
    const own = pieces.filter((piece) => piece.product === product.product);
    return [
      zincRow(codeName(product.product), product.zinc, campaign.coverage_factor),
      ...own.flatMap((piece) =>
        piece.zinc === null ? [] : [zincRow(`h(6pt); ${codeText(piece.piece)}`, piece.zinc, campaign.coverage_factor)],
      ),
    ];
  });
  if (rows.length === 0) return [section('Zinc'), paragraph(literal('Nothing was recorded of the zinc.'))].join('\n');
  return [
    section('Zinc'),
    table(
      [
        codeColumn(
          'Product, piece',
          pieces.map((piece) => piece.piece),
        ),
        { heading: 'Readings', align: 'right' },
        { heading: 'Mean thickness', unit: 'µm ± U', align: 'right' },
        { heading: 'Least mean of a link', unit: 'µm', align: 'right' },
        { heading: 'Worst adherence after the pull', width: '1fr' },
        { heading: 'Most flaked', unit: '%', align: 'right' },
      ],
      rows,
    ),
    note(
      literal(
        'U of the mean is from the scatter of the readings alone. Adherence describes how the zinc behaved when the links stretched; it is no requirement unless the specification says so.',
      ),
    ),
  ].join('\n');
}

function zincRow(name: Typst, survey: ZincSurvey, coverageFactor: number): readonly Typst[] {
  const standard = survey.standardUncertainty_um;
  const mean =
    survey.mean_um === null ? null : rounded(survey.mean_um, standard === null ? null : standard * coverageFactor);
  const grade = survey.worstAdherence;
  return [
    `{ ${name} }`,
    literal(String(survey.readings)),
    literal(mean === null ? absent : mean.uncertainty === null ? mean.value : `${mean.value} ± ${mean.uncertainty}`),
    literal(significant(survey.leastLinkMean_um)),
    literal(grade === null ? absent : `${grade}: ${adherenceWords[grade] ?? 'not on the scale'}`),
    literal(significant(survey.greatestFlakedShare_pct, 2)),
  ];
}
