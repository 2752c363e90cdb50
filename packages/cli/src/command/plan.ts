import type {
  BriefFinding,
  OrderBrief,
  PlannedNumber,
  ProductBrief,
  RigBrief,
  SizeBrief,
} from '@provinghouse/contract';
import { briefOfCampaign } from '@provinghouse/service';
import { type Command, only } from '../command.ts';
import { exitCode } from '../exit.ts';
import { columns, shown, wrapped } from '../layout.ts';
import { withRecord } from '../record.ts';

export const plan: Command = {
  name: 'plan',
  usage: 'plan CAMPAIGN [--json]',
  summary: 'Say what the pieces of a campaign can show, which rig suits them, and an order of pulls drawn by lot.',
  options: { json: { type: 'boolean', help: 'the whole brief, each number with its method and inputs' } },
  example: 'provinghouse plan SALLOW-REACH',
  async run({ positionals, values, terminal }) {
    const campaign = only(positionals, 'a campaign');
    const brief = await withRecord(terminal, (effects) => briefOfCampaign({ campaign }, effects));
    terminal.out.write(values.json ? `${JSON.stringify(brief)}\n` : printed(brief));
    return exitCode.done;
  },
};

function printed(brief: BriefFinding): string {
  return [
    `Brief of ${brief.campaign}`,
    '',
    wrapped(brief.question),
    wrapped(brief.ruleSentence),
    '',
    'In short',
    ...brief.answers.map((sentence) => wrapped(sentence, '  ')),
    '',
    'Chance to show that the breaking force lies above the minimum (95 % confidence)',
    showingTable(brief.products),
    '',
    'Telling products apart',
    apartTable(brief.sizes),
    '',
    'Rigs',
    ...brief.rigs.flatMap(rigLines),
    '',
    ...(brief.order === null ? [] : orderLines(brief.order)),
    'Taken for granted',
    ...brief.assumptions.map((sentence) => wrapped(sentence, '  ')),
    '',
    `Next: provinghouse judge ${brief.campaign}`,
    '',
  ].join('\n');
}

/** A chance in per cent; one that rounds to certainty is not shown as such. */
function percent({ value }: PlannedNumber): string {
  if (value === null) return '-';
  if (value < 0.001) return '< 0.1 %';
  return value > 0.999 ? '> 99.9 %' : `${(100 * value).toFixed(1)} %`;
}

const count = ({ value }: PlannedNumber) => (value === null ? 'none' : String(value));

function showingTable(products: readonly ProductBrief[]): string {
  const head = [
    '  product',
    'pieces',
    'scatter',
    'expected',
    'all pass',
    'mean',
    'for 90 %',
    '95 % of pieces',
    'for 90 %',
  ];
  const rows = products.flatMap(({ product, pieces, plans }) =>
    plans.map((one) => [
      `  ${product}`,
      String(pieces),
      `${(one.cov_pct.value ?? 0).toFixed(1)} %`,
      one.basis,
      percent(one.allPass),
      percent(one.mean.chance),
      count(one.mean.piecesFor90),
      percent(one.share.chance),
      count(one.share.piecesFor90),
    ]),
  );
  return columns([head, ...rows], [1, 2, 4, 5, 6, 7, 8]);
}

function apartTable(sizes: readonly SizeBrief[]): string {
  const head = ['  size', 'pieces', 'scatter', 'expected', 'difference told at 90 %', 'pieces for 5 % at 90 %'];
  const rows = sizes.flatMap(({ nominalSize_mm, differences }) =>
    differences.map((one) => [
      `  ${nominalSize_mm} mm`,
      String(one.pieces),
      `${(one.cov_pct.value ?? 0).toFixed(1)} %`,
      one.basis,
      one.difference90_pct.value === null ? '-' : `${one.difference90_pct.value.toFixed(1)} %`,
      count(one.piecesFor90),
    ]),
  );
  return columns([head, ...rows], [1, 2, 4, 5]);
}

function rigLines({ rig, rangeMinimum_kN, rangeMaximum_kN, class: rigClass, checks }: RigBrief): string[] {
  const range = `verified from ${shown(rangeMinimum_kN)} to ${shown(rangeMaximum_kN)} kN, class ${shown(rigClass)}`;
  return [
    `  ${rig}: ${range}`,
    ...checks.map(({ nominalSize_mm, basis, check }) =>
      wrapped(`${nominalSize_mm} mm, ${basis}: ${check.sentence}`, '    '),
    ),
  ];
}

function orderLines({ drawn, made, likeNeighbours, sentences }: OrderBrief): string[] {
  const rows = drawn.order.map((pull, index) => [
    `  ${pull.position}`,
    `block ${pull.block}`,
    pull.piece,
    made[index]?.piece ?? '-',
    made[index]?.rig ?? '',
    made[index]?.pulledAt ?? '',
  ]);
  return [
    `Order of pulls, drawn with seed ${drawn.seed}, beside the order made`,
    columns([['  place', '', 'drawn', 'made', '', ''], ...rows]),
    ...[...sentences, ...(likeNeighbours === null ? [] : [likeNeighbours.sentence]), ...drawn.doubts].map((sentence) =>
      wrapped(sentence, '  '),
    ),
    '',
  ];
}
