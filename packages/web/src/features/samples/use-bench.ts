import { isBlind, type Row, type RowHeld, type TableName } from '@provinghouse/contract';
import type { OwnStandard } from '@provinghouse/core';
import { today } from '../../lib/entry/today.ts';
import type { HeldState } from '../../lib/entry/use-held.ts';
import { type RowsState, useRows } from '../../lib/entry/use-rows.ts';
import { useStandardsOf } from '../../lib/own-standards.ts';
import type { Fault } from '../../lib/request.ts';
import { alertsOf, type SampleAlert } from '../../lib/samples/account.ts';
import { type Expectation, expectationOf } from '../../lib/samples/against-claim.ts';

/** A sample with all that belongs to it. */
export interface SampleSeen {
  readonly held: RowHeld<'samples'>;
  readonly product: Row<'products'> | null;
  readonly expected: Expectation;
  readonly moves: readonly RowHeld<'custody'>[];
  readonly pieces: readonly RowHeld<'pieces'>[];
  readonly alerts: readonly SampleAlert[];
}

/** What became of the pieces, by the code of the piece. */
export interface Fates {
  readonly readings: ReadonlyMap<string, number>;
  readonly pulls: ReadonlyMap<string, readonly Row<'pulls'>[]>;
  readonly read: ReadonlySet<string>;
}

export interface Bench {
  readonly state: 'read';
  readonly campaign: Row<'campaign'>;
  readonly products: readonly Row<'products'>[];
  readonly people: readonly Row<'people'>[];
  readonly own: readonly OwnStandard[];
  readonly samples: readonly SampleSeen[];
  readonly pieces: readonly RowHeld<'pieces'>[];
  readonly fates: Fates;
  /** Whose the samples are is hidden now, so none is received or corrected. */
  readonly isBlind: boolean;
}

type BenchState =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | Bench;

/** All rows that the samples of a campaign hang on. */
export function useBench(code: string): BenchState {
  const campaign = useRows(code, 'campaign');
  const products = useRows(code, 'products');
  const people = useRows(code, 'people');
  const samples = useRows(code, 'samples');
  const custody = useRows(code, 'custody');
  const pieces = useRows(code, 'pieces');
  const gauging = useRows(code, 'gauging');
  const pulls = useRows(code, 'pulls');
  const breaks = useRows(code, 'breaks');
  const own = useStandardsOf(code);
  const all = [campaign, products, people, samples, custody, pieces, gauging, pulls, breaks, own];
  const broken = all.find((one): one is Extract<HeldState<unknown>, { state: 'at fault' }> => one.state === 'at fault');
  if (broken) return broken;
  const row = rowsIn(campaign)[0]?.body;
  if (!row || own.state !== 'read' || all.some(({ state }) => state === 'reading')) return { state: 'reading' };
  const claims = rowsIn(products).map(({ body }) => body);
  return {
    state: 'read',
    campaign: row,
    products: claims,
    own: own.rows,
    people: rowsIn(people).map(({ body }) => body),
    pieces: rowsIn(pieces),
    fates: fatesOf(rowsIn(gauging), rowsIn(pulls), rowsIn(breaks)),
    isBlind: isBlind(row),
    samples: rowsIn(samples).map((held) => {
      const product = claims.find((one) => one.product === held.body.product);
      const expected = expectationOf(product, own.rows);
      const moves = rowsIn(custody).filter(({ body }) => body.sample === held.id);
      const cut = rowsIn(pieces).filter(({ body }) => body.sample === held.id);
      const alerts = alertsOf({
        sample: held.body,
        moves: moves.map(({ body }) => body),
        pieces: cut.map(({ body }) => body),
        pitch_mm: expected.pitch_mm,
        today: today(),
      });
      return { held, product: product ?? null, expected, moves, pieces: cut, alerts };
    }),
  };
}

function rowsIn<T extends TableName>(rows: RowsState<T>): readonly RowHeld<T>[] {
  return rows.state === 'read' ? rows.rows : [];
}

function fatesOf(
  gauging: readonly RowHeld<'gauging'>[],
  pulls: readonly RowHeld<'pulls'>[],
  breaks: readonly RowHeld<'breaks'>[],
): Fates {
  const byPiece = Map.groupBy(
    pulls.map(({ body }) => body),
    ({ piece }) => piece,
  );
  const examined = new Set(breaks.map(({ body }) => body.pull));
  const pieceOf = pulls.filter(({ id }) => examined.has(id)).map(({ body }) => body.piece);
  const readings = new Map<string, number>();
  for (const { body } of gauging) readings.set(body.piece, (readings.get(body.piece) ?? 0) + 1);
  return { readings, pulls: byPiece, read: new Set(pieceOf) };
}
