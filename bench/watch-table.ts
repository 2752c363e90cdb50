import type { Stage } from '@provinghouse/core';
import { type ForecastMoment, type Replay, WAYS } from './watch-replay.ts';

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

function nearBefore({ changes, pull }: Replay): number | null {
  const near = changes.find(({ stage, time_s }) => stage === 'near maximum' && time_s <= pull.timeOfMaximum_s);
  return near ? pull.timeOfMaximum_s - near.time_s : null;
}

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
    'warned before the maximum',
    'median warning, s',
  ];
  const rows = groups.map(({ name, replays }) => {
    const leads = replays.map(nearBefore).filter((lead) => lead !== null);
    return [
      name,
      replays.length,
      count(replays, isInOrder),
      count(replays, callsFallEarly),
      count(replays, callsPartingEarly),
      replays.reduce((sum, { early }) => sum + early, 0),
      count(replays, isMissed),
      leads.length,
      leads.length > 0 ? median(leads).toFixed(1) : '',
    ];
  });
  return table(heads, rows);
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
