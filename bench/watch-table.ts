import type { Stage } from '@provinghouse/core';
import { type ForecastMoment, type Replay, RISES, WAYS, type Warning } from './watch-replay.ts';

export interface Group {
  readonly name: string;
  readonly replays: readonly Replay[];
}

const ORDER: readonly Stage[] = ['take-up', 'elastic', 'plastic', 'near maximum', 'past maximum', 'parted'];
/** A fall is not called early when the maximum comes within this time. */
const EARLY_S = 0.5;

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? Number.NaN) + (sorted[sorted.length >> 1] ?? Number.NaN)) / 2;
}

function percent(value: number): string {
  return Number.isNaN(value) ? '' : (100 * value).toFixed(1);
}

function row(cells: readonly (string | number)[]): string {
  return `| ${cells.join(' | ')} |`;
}

function table(heads: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return [row(heads), row(heads.map((_, i) => (i === 0 ? '---' : '---:'))), ...rows.map(row)].join('\n');
}

/** Each stage first seen in its order, elastic and plastic among them. */
function isInOrder({ changes }: Replay): boolean {
  const seen = [...new Set(changes.map(({ stage }) => stage))].filter((stage) => stage !== 'slack');
  const places = seen.map((stage) => ORDER.indexOf(stage));
  const rises = places.every((place, i) => i === 0 || place > (places[i - 1] ?? -1));
  return rises && seen.includes('elastic') && seen.includes('plastic');
}

function callsFallEarly({ changes, pull }: Replay): boolean {
  return changes.some(({ stage, time_s }) => stage === 'past maximum' && time_s < pull.timeOfMaximum_s - EARLY_S);
}

function callsPartingEarly({ changes, pull }: Replay): boolean {
  const parting_s = pull.timeOfParting_s ?? Number.POSITIVE_INFINITY;
  return changes.some(({ stage, time_s }) => stage === 'parted' && time_s < parting_s);
}

/** A warning comes far too early when over a tenth of the maximum is still missing. */
const FAR = 0.9;

function warningCells(replays: readonly Replay[], warningOf: (replay: Replay) => Warning | null): (string | number)[] {
  const seen = replays.flatMap((replay) => {
    const warning = warningOf(replay);
    return warning ? [{ ...warning, lead_s: replay.pull.timeOfMaximum_s - warning.time_s }] : [];
  });
  if (seen.length === 0) return [0, '', '', ''];
  return [
    seen.length,
    seen.filter(({ share }) => share < FAR).length,
    median(seen.map(({ lead_s }) => lead_s)).toFixed(1),
    percent(median(seen.map(({ timeLeft }) => timeLeft))),
  ];
}

const WARNING_HEADS = [
  'warned before the maximum',
  'of these under 90 % of it',
  'median lead, s',
  'median lead, % of the loaded time',
];

/** A maximum is missed when a pull that parted ends without one accepted, or one off by over 0.5 %. */
function isMissed({ pull, accepted_kN }: Replay): boolean {
  if (pull.timeOfParting_s === null) return false;
  return accepted_kN === null || Math.abs(accepted_kN / pull.maximum_kN - 1) > 0.005;
}

function count(replays: readonly Replay[], test: (replay: Replay) => boolean): number {
  return replays.filter(test).length;
}

export function stageTable(groups: readonly Group[]): string {
  const heads = [
    'pulls',
    'number',
    'stages in order',
    'fall called early',
    'parting shown early',
    'maximum final early',
    'maximum missed',
    ...WARNING_HEADS,
  ];
  const rows = groups.map(({ name, replays }) => {
    return [
      name,
      replays.length,
      count(replays, isInOrder),
      count(replays, callsFallEarly),
      count(replays, callsPartingEarly),
      replays.reduce((sum, { early }) => sum + early, 0),
      count(replays, isMissed),
      ...warningCells(replays, ({ warned }) => warned),
    ];
  });
  return table(heads, rows);
}

/** What the warning would be if it went by the middle of the forecast alone. */
export function warningTable({ replays }: Group): string {
  const rows = RISES.map((rise) => [
    `forecast expects under ${(100 * rise).toFixed(1)} % more`,
    ...warningCells(replays, ({ expected }) => expected.get(rise) ?? null),
  ]);
  const asIs = ['as it is', ...warningCells(replays, ({ warned }) => warned)];
  return table(['warning when', ...WARNING_HEADS], [...rows, asIs]);
}

function momentRow(
  name: string,
  where: string,
  all: readonly (ForecastMoment | null | undefined)[],
): (string | number)[] {
  const given = all.filter((moment) => moment !== null && moment !== undefined);
  const held = given.filter((moment) => moment.held).length / given.length;
  return [
    name,
    where,
    `${given.length} of ${all.length}`,
    percent(held),
    percent(median(given.map(({ width }) => width))),
    percent(median(given.map(({ middle }) => Math.abs(middle - 1)))),
    percent(median(given.map(({ naive }) => Math.abs(naive - 1)))),
  ];
}

export function forecastTable({ name, replays }: Group): string {
  const heads = [
    'pulls',
    'moment',
    'forecast given',
    '90 % interval held, %',
    'median width, %',
    'median error, %',
    'error of "maximum so far", %',
  ];
  const at = (kind: 'byForce' | 'byTime', of: string): (string | number)[][] =>
    WAYS.map((way) =>
      momentRow(
        name,
        `${100 * way} % of ${of}`,
        replays.map((replay) => replay[kind].get(way)),
      ),
    );
  return table(heads, [...at('byTime', 'the loaded time to the maximum'), ...at('byForce', 'the maximum force')]);
}

export function coverageTable(groups: readonly Group[]): string {
  const rows = groups.map(({ name, replays }) => {
    const shares = replays.map(({ heldShare }) => heldShare).filter((share) => share !== null);
    const held = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    return [
      name,
      `${shares.length} of ${replays.length}`,
      percent(median(replays.map(({ givenShare }) => givenShare))),
      percent(held),
    ];
  });
  return table(
    [
      'pulls',
      'pulls with a forecast',
      'median share of the time from knee to maximum with one, %',
      '90 % interval held, %',
    ],
    rows,
  );
}
