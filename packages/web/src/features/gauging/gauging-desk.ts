import type { Row, RowHeld } from '@provinghouse/contract';
import {
  type GaugingInput,
  type GaugingInstrument,
  type GaugingPlace,
  isInputError,
  type Limit,
  type OwnStandard,
  placeKey,
  specificationFor,
  surveyZinc,
} from '@provinghouse/core';
import { productOf } from '../../lib/entry/product-of.ts';
import { type GaugingPlan, placesOf } from './gauging-plan.ts';
import type { Progress } from './gauging-progress.ts';
import type { ReadingSeen } from './merged-readings.ts';

/** Rows of the record that Gauging works from. */
export interface DeskRows {
  readonly campaign: readonly RowHeld<'campaign'>[];
  readonly people: readonly RowHeld<'people'>[];
  readonly products: readonly RowHeld<'products'>[];
  readonly samples: readonly RowHeld<'samples'>[];
  readonly pieces: readonly RowHeld<'pieces'>[];
  readonly zinc: readonly RowHeld<'zinc'>[];
  readonly instruments: readonly RowHeld<'instruments'>[];
  readonly calibrations: readonly RowHeld<'calibrations'>[];
  readonly benchInstruments: readonly RowHeld<'instruments'>[];
  readonly benchCalibrations: readonly RowHeld<'calibrations'>[];
  /** Own specifications of the campaign, then of the bench. */
  readonly own: readonly OwnStandard[];
}

type PieceRows = Pick<DeskRows, 'products' | 'samples' | 'pieces' | 'zinc' | 'own'>;

/** A piece with all that its readings are held against. */
export interface PieceAtDesk {
  readonly piece: string;
  readonly held: RowHeld<'pieces'>;
  readonly product: Row<'products'> | null;
  readonly limits: readonly Limit[];
  /** What comes off a diameter for zinc, mm; 0 for bare steel or where nothing is said, null where it is not known yet. */
  readonly zincOnBar_mm: number | null;
  readonly readings: readonly ReadingSeen[];
  readonly progress: Progress;
}

/** What {@link piecesAtDesk} works from. */
export interface DeskInputs {
  readonly rows: PieceRows;
  readonly readings: readonly ReadingSeen[];
  readonly plan: GaugingPlan;
  readonly skipped: ReadonlySet<string>;
}

/** The pieces of a campaign in the order in which they were cut. */
export function piecesAtDesk({ rows, readings, plan, skipped }: DeskInputs): readonly PieceAtDesk[] {
  const ofPiece = Map.groupBy(readings, ({ row }) => row.piece);
  const limitsOf = new Map(rows.products.map(({ body }) => [body.product, limitsFor(body, rows.own)]));
  return rows.pieces.map((held): PieceAtDesk => {
    const { piece, links } = held.body;
    const product = productOf(held.body, rows);
    const limits = product === null ? [] : (limitsOf.get(product.product) ?? []);
    const seen = ofPiece.get(piece) ?? [];
    return {
      piece,
      held,
      product,
      limits,
      zincOnBar_mm: zincOnBar(held.body, rows.zinc),
      readings: seen,
      progress: {
        places: placesOf(plan, { links, limits }),
        read: new Set(seen.map(({ row }) => placeKey(toInput(row)))),
        skipped: new Set(
          [...skipped].filter((one) => one.startsWith(`${piece} `)).map((one) => one.slice(piece.length + 1)),
        ),
      },
    };
  });
}

/** Limits of a product; none where neither the rulebook nor an own specification has its rule. */
function limitsFor(product: Row<'products'>, own: readonly OwnStandard[]): readonly Limit[] {
  const { specification: standard, grade, nominal_size_mm: size_mm } = product;
  try {
    return specificationFor({ standard, grade: grade ?? undefined, size_mm, own }).limits;
  } catch (error) {
    if (isInputError(error)) return [];
    throw error;
  }
}

/** As the verdict takes it: twice the mean thickness read on the piece. */
function zincOnBar({ piece, gauged_over }: Row<'pieces'>, zinc: readonly RowHeld<'zinc'>[]): number | null {
  if (gauged_over !== 'zinc') return 0;
  const survey = surveyZinc(
    zinc
      .filter(({ body }) => body.piece === piece)
      .map(({ body }) => ({
        place: `${body.piece}, link ${body.link}`,
        thickness_um: body.thickness_um,
        adherence: body.adherence,
        flakedShare_pct: body.flaked_share_pct,
        note: body.note,
      })),
  );
  return survey?.mean_um == null ? null : (2 * survey.mean_um) / 1000;
}

/** A row of the table as a reading. */
export function toInput(row: Row<'gauging'>): GaugingInput & { readonly repeat: number } {
  return {
    link: row.link,
    position: row.position as GaugingInput['position'], // the table allows these words only
    quantity: row.quantity as GaugingInput['quantity'],
    direction: row.direction,
    repeat: row.repeat,
    value_mm: row.value_mm,
    overLinks: row.over_links,
    instrument: row.instrument,
    by: row.by,
  };
}

/** Readings of the other pieces of the same product. */
export function readingsOfProduct(pieces: readonly PieceAtDesk[], of: PieceAtDesk): readonly GaugingInput[] {
  if (of.product === null) return [];
  return pieces
    .filter((one) => one.piece !== of.piece && one.product?.product === of.product?.product)
    .flatMap(({ readings }) => readings.map(({ row }) => toInput(row)));
}

/** What is known of an instrument behind a reading. */
export function instrumentBehind(
  row: Row<'instruments'>,
  calibrations: readonly Row<'calibrations'>[],
): GaugingInstrument {
  const certificate = calibrations
    .filter(({ instrument }) => instrument === row.instrument)
    .toSorted((a, b) => (a.due_on < b.due_on ? 1 : -1))[0];
  const perMm = row.unit === 'um' ? 0.001 : 1;
  return {
    instrument: row.instrument,
    resolution_mm: row.resolution * perMm,
    calibrationUncertainty_mm:
      certificate?.expanded_uncertainty == null ? null : certificate.expanded_uncertainty * perMm,
    coverageFactor: certificate?.coverage_factor ?? 2,
  };
}

/** A place and a value as a row of the table. */
export function gaugingRow(
  place: GaugingPlace,
  read: Pick<Row<'gauging'>, 'piece' | 'value_mm' | 'instrument' | 'by' | 'read_at'>,
): Row<'gauging'> {
  const { link, position, quantity, direction, repeat, overLinks } = place;
  const { piece, value_mm, instrument, by, read_at } = read;
  return {
    piece,
    link,
    position,
    quantity,
    direction,
    repeat,
    value_mm,
    over_links: overLinks,
    instrument,
    by,
    read_at,
  };
}
