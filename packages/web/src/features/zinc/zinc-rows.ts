import type { Row, RowHeld } from '@provinghouse/contract';
import { type OwnStandard, surveyZinc, type ZincSurvey } from '@provinghouse/core';
import { productOf } from '../../lib/entry/product-of.ts';

/** What the screens of Zinc read. */
export interface ZincRows {
  readonly people: readonly RowHeld<'people'>[];
  readonly products: readonly RowHeld<'products'>[];
  readonly samples: readonly RowHeld<'samples'>[];
  readonly pieces: readonly RowHeld<'pieces'>[];
  readonly pulls: readonly RowHeld<'pulls'>[];
  readonly zinc: readonly RowHeld<'zinc'>[];
  readonly instruments: readonly RowHeld<'instruments'>[];
  readonly calibrations: readonly RowHeld<'calibrations'>[];
  readonly benchInstruments: readonly RowHeld<'instruments'>[];
  readonly benchCalibrations: readonly RowHeld<'calibrations'>[];
  readonly own: readonly OwnStandard[];
}

/** The survey over rows of one or more pieces; links of different pieces keep their own means. */
export function surveyOf(rows: readonly Row<'zinc'>[]): ZincSurvey | null {
  return surveyZinc(
    rows.map((row) => ({
      place: `${row.piece}, link ${row.link}`,
      thickness_um: row.thickness_um,
      adherence: row.adherence,
      flakedShare_pct: row.flaked_share_pct,
      note: row.note,
    })),
  );
}

/** Every thickness read on pieces of the same product, um. */
export function thicknessesLike(piece: Row<'pieces'>, rows: ZincRows): readonly number[] {
  const product = productOf(piece, rows)?.product;
  const samples = new Set(rows.samples.filter(({ body }) => body.product === product).map(({ body }) => body.sample));
  const pieces = new Set(rows.pieces.filter(({ body }) => samples.has(body.sample)).map(({ body }) => body.piece));
  return rows.zinc.flatMap(({ body }) =>
    pieces.has(body.piece) && body.thickness_um !== null ? [body.thickness_um] : [],
  );
}
