import { type CellOutcome, statements } from './coverage-cell.ts';

const decimals = 1;

/** Markdown of all cells: how often in a hundred each statement held, and how sharp the chain bounds were. */
export function coverageTable(outcomes: readonly CellOutcome[]): string {
  const heads = [
    'pieces',
    'scatter %',
    'weld breaks %',
    ...statements.map(({ name, nominal }) => `${name} (${100 * nominal})`),
    'bound / true: chain',
    'seen modes',
    'bootstrap',
  ];
  const rows = outcomes.map(({ cell, tallies, sharpness }) => [
    String(cell.pieces),
    String(cell.scatter_pct),
    String(100 * cell.weldShare),
    ...statements.map(({ name, nominal }) => rate(tallies[name], nominal)),
    sharpness.all.toFixed(2),
    sharpness.seen.toFixed(2),
    sharpness.bootstrap?.toFixed(2) ?? '',
  ]);
  return [heads, heads.map(() => '---:'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

/** A rate in per cent; starred where it falls more than two points below the nominal, and empty below fifty campaigns. */
function rate({ held, made }: { readonly held: number; readonly made: number }, nominal: number): string {
  if (made < 50) return '';
  const share = held / made;
  return `${(100 * share).toFixed(decimals)}${share < nominal - 0.02 ? '*' : ''}`;
}
