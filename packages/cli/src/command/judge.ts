import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { type MeasuredValue, quantityNames, roundByUncertainty, type Verdict } from '@provinghouse/core';
import { judgeCampaign } from '@provinghouse/service';
import { type Command, only, type Terminal } from '../command.ts';
import { exitCode } from '../exit.ts';
import { columns, shown, wrapped } from '../layout.ts';
import { withRecord } from '../record.ts';

export const judge: Command = {
  name: 'judge',
  usage: 'judge CAMPAIGN [--json]',
  summary: 'Judge every piece and product of a campaign against its specification.',
  options: { json: { type: 'boolean', help: 'the whole finding; the same input gives the same bytes' } },
  example: 'provinghouse judge SALLOW-REACH',
  async run({ positionals, values, terminal }) {
    const campaign = only(positionals, 'a campaign');
    const finding = await withRecord(terminal, (effects) => judgeCampaign({ campaign }, effects));
    terminal.out.write(values.json ? `${JSON.stringify(finding)}\n` : printed(finding, terminal));
    return exitCode.done;
  },
};

const shapes = {
  conforms: '●',
  'does not conform': '■',
  inconclusive: '◆',
  'not judged': '○',
} as const satisfies Record<Verdict, string>;
const inks = { conforms: 32, 'does not conform': 31, inconclusive: 33, 'not judged': 90 } as const satisfies Record<
  Verdict,
  number
>;

function verdictText(verdict: Verdict, terminal: Terminal): string {
  const words = `${shapes[verdict]} ${verdict}`;
  return terminal.colours ? `\u001b[${inks[verdict]}m${words}\u001b[0m` : words;
}

/** A value to the places its uncertainty leaves it, with the uncertainty. */
function measuredText(measured: MeasuredValue | null): string {
  if (measured === null) return '-';
  const { value, unit, expandedUncertainty, isAtLeast } = measured;
  const atLeast = isAtLeast ? '>= ' : '';
  if (expandedUncertainty === null || expandedUncertainty <= 0) return `${atLeast}${shown(value)} ${unit}`;
  const rounded = roundByUncertainty({ value, uncertainty: expandedUncertainty });
  return `${atLeast}${rounded.value} +/- ${rounded.uncertainty} ${unit}`;
}

function printed(finding: CampaignFinding, terminal: Terminal): string {
  const { campaign } = finding;
  return [
    `${campaign.title}  (${campaign.campaign})`,
    ...(campaign.marking === null ? [] : [campaign.marking.toUpperCase()]),
    '',
    wrapped(campaign.question),
    wrapped(finding.ruleSentence),
    '',
    ...finding.products.map((product) => productText(product, finding, terminal)),
    ...finding.comparisons.flatMap((comparison) => [
      `${comparison.nominalSize_mm} mm, side by side`,
      ...comparison.sentences.map((sentence) => wrapped(sentence, '  ')),
      '',
    ]),
    'Limits of this finding',
    ...finding.limitsOfTheFinding.map((sentence) => wrapped(sentence, '  ')),
    ...(finding.doubts.length === 0 ? [] : ['', 'Doubts', ...finding.doubts.map((doubt) => wrapped(doubt, '  '))]),
    '',
    `Next: provinghouse publish ${campaign.campaign} --out FILE.pdf`,
    '',
  ].join('\n');
}

function productText(product: ProductFinding, finding: CampaignFinding, terminal: Terminal): string {
  const pieces = finding.pieces.filter((piece) => piece.product === product.product);
  const rows = pieces.map((piece) => [
    `  ${piece.piece}`,
    measuredText(piece.pull?.maximum ?? null),
    measuredText(piece.pull?.elongation ?? null),
    piece.breaks[0] ? `${piece.breaks[0].position}, ${piece.breaks[0].mode}` : '-',
    verdictText(piece.standing, terminal),
  ]);
  return [
    `${product.product}  ${product.specification.title}  ${verdictText(product.standing, terminal)}`,
    columns(rows, [1, 2]),
    wrapped(product.breakingForce.sentence, '  '),
    ...(product.split ? [wrapped(product.split.sentence, '  ')] : []),
    ...product.judgements
      .filter((judgement) => judgement.deciding.length > 0)
      .map(
        (judgement) =>
          `  ${quantityNames[judgement.quantity]}: ${verdictText(judgement.verdict, terminal)} on ${judgement.deciding.join(', ')}`,
      ),
    '',
  ].join('\n');
}
