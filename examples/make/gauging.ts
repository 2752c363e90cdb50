import type { Row } from '@provinghouse/contract';
import type { Link, Random } from '@provinghouse/rig/practice';

type Reading = Row<'gauging'>;

export interface GaugedPiece {
  readonly piece: string;
  readonly links: readonly Link[];
  /** Zinc on each link; what lies under the jaws of the calliper where the link was not stripped. */
  readonly zinc_um: readonly number[];
  readonly stripped: boolean;
  readonly by: string;
  /** Who reads link 3 again, unseen by the first; null where nobody does. */
  readonly again: string | null;
  /** First reading, milliseconds since 1970. */
  readonly startsAt: number;
}

/** Links that were gauged, counted from the fixed end. */
const gaugedLinks = [1, 3, 5];
/** Spread of a hand-held calliper on a round, rough bar; and how hard each person closes the jaws. */
const handScatter_mm = 0.012;
const handBias_mm: Readonly<Record<string, number>> = { wren: 0.004, plover: -0.008 };
const calliperStep_mm = 0.01;
const secondsBetweenReadings = 25;

/** All readings of one piece: seven on each of three links, and one length over the free links. */
export function gaugePiece(piece: GaugedPiece, random: Random): Reading[] {
  const sheet = new GaugingSheet(piece, random);
  for (const number of gaugedLinks) sheet.readLink(number, 1, piece.by);
  if (piece.again !== null) sheet.readLink(3, 2, piece.again);
  sheet.readLength(gaugeLength_mm(piece.links));
  return sheet.readings;
}

/** Sum of the inside lengths of the free links. */
export function gaugeLength_mm(links: readonly Link[]): number {
  return links.reduce((sum, link) => sum + link.pitch_mm, 0);
}

class GaugingSheet {
  readonly readings: Reading[] = [];
  readonly #piece: GaugedPiece;
  readonly #random: Random;

  constructor(piece: GaugedPiece, random: Random) {
    this.#piece = piece;
    this.#random = random;
  }

  readLink(number: number, repeat: number, by: string): void {
    const link = this.#piece.links[number - 1];
    if (!link) throw new Error(`${this.#piece.piece} has no link ${number}`);
    const zinc = this.#piece.stripped ? 0 : (2 * (this.#piece.zinc_um[number - 1] ?? 0)) / 1000;
    const over = (link.diameter_mm + zinc) * 2;
    const where = { link: number, repeat, by };
    this.#read(where, 'leg', 'diameter', 1, link.diameter_mm + link.ovality_mm / 2 + zinc);
    this.#read(where, 'leg', 'diameter', 2, link.diameter_mm - link.ovality_mm / 2 + zinc);
    this.#read(where, 'weld', 'weldDiameter', 1, link.weldDiameter_mm + zinc);
    this.#read(where, 'weld', 'weldDiameter', 2, link.weldDiameter_mm - 0.08 + zinc);
    this.#read(where, 'link', 'pitch', 1, link.pitch_mm);
    this.#read(where, 'link', 'innerWidth', 1, link.innerWidth_mm);
    this.#read(where, 'link', 'outerWidth', 1, link.innerWidth_mm + over);
  }

  readLength(length_mm: number): void {
    const { by } = this.#piece;
    this.#read({ link: null, repeat: 1, by }, 'piece', 'lengthOverLinks', 1, length_mm);
  }

  #read(
    where: { readonly link: number | null; readonly repeat: number; readonly by: string },
    position: string,
    quantity: string,
    direction: number,
    true_mm: number,
  ): void {
    const seen = true_mm + (handBias_mm[where.by] ?? 0) + this.#random.normal(0, handScatter_mm);
    const at = this.#piece.startsAt + this.readings.length * secondsBetweenReadings * 1000;
    this.readings.push({
      piece: this.#piece.piece,
      link: where.link,
      position,
      quantity,
      direction,
      repeat: where.repeat,
      value_mm: Number((Math.round(seen / calliperStep_mm) * calliperStep_mm).toFixed(2)),
      over_links: quantity === 'lengthOverLinks' ? this.#piece.links.length : null,
      instrument: quantity === 'lengthOverLinks' ? 'CAL-2' : 'CAL-1',
      by: where.by,
      read_at: new Date(at).toISOString().replace('.000Z', 'Z'),
    });
  }
}
