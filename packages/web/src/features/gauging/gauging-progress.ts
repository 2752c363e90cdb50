import { type GaugingPlace, placeKey } from '@provinghouse/core';

/** How far a piece is: its places, and which of them are read or passed over. */
export interface Progress {
  readonly places: readonly GaugingPlace[];
  /** Keys of the places that are read. */
  readonly read: ReadonlySet<string>;
  /** Keys of the places that somebody passed over on this visit. */
  readonly skipped: ReadonlySet<string>;
}

export function readCount({ places, read }: Progress): number {
  return places.filter((place) => read.has(placeKey(place))).length;
}

/**
 * The next place to read after one: the next open one down the schedule, else the first open one above; null where none is open.
 * A place that was passed over is not open.
 *
 * @param from index of the place at hand; -1 for the beginning
 */
export function nextOpen({ places, read, skipped }: Progress, from: number): number | null {
  const isOpen = (place: GaugingPlace) => !read.has(placeKey(place)) && !skipped.has(placeKey(place));
  const below = places.findIndex((place, at) => at > from && isOpen(place));
  if (below >= 0) return below;
  const above = places.findIndex(isOpen);
  return above < 0 || above === from ? null : above;
}

/** The piece to go on with after one: the next that has an open place, round the end of the list; null where none has. */
export function nextPiece(
  pieces: readonly { readonly piece: string; readonly progress: Progress }[],
  from: string | null,
): string | null {
  const at = pieces.findIndex(({ piece }) => piece === from);
  const inTurn = [...pieces.slice(at + 1), ...pieces.slice(0, Math.max(0, at))];
  return inTurn.find(({ progress }) => nextOpen(progress, -1) !== null)?.piece ?? null;
}

type Place = Pick<GaugingPlace, 'link' | 'position' | 'quantity' | 'direction'>;

export function isSamePlace(a: Place, b: Place): boolean {
  return a.link === b.link && a.position === b.position && a.quantity === b.quantity && a.direction === b.direction;
}

/** The place as it is to be read now: itself while it is unread, else its next repeat. */
export function placeToRead(
  place: GaugingPlace,
  readings: readonly (Place & { readonly repeat: number })[],
): GaugingPlace {
  const repeats = readings.filter((one) => isSamePlace(one, place)).map(({ repeat }) => repeat);
  return repeats.includes(place.repeat) ? { ...place, repeat: 1 + Math.max(...repeats) } : place;
}

/** The places of a piece as a grid: a row for each link, a column for each thing read on a link; lengths of the piece apart. */
export interface PlaceGrid {
  readonly columns: readonly Place[];
  readonly rows: readonly {
    readonly link: number;
    readonly repeat: number;
    /** Index in the schedule for each column; null where the link has no such place. */
    readonly at: readonly (number | null)[];
  }[];
  readonly lengths: readonly number[];
}

export function gridOf(places: readonly GaugingPlace[]): PlaceGrid {
  const indexed = places.map((place, at) => ({ place, at }));
  const ofLinks = indexed.filter(({ place }) => place.link !== null);
  const columnOf = ({ quantity, position, direction }: Place) => [quantity, position, direction].join('/');
  const columns = [...new Map(ofLinks.map(({ place }) => [columnOf(place), place])).values()];
  const rows = Map.groupBy(ofLinks, ({ place }) => `${place.link}/${place.repeat}`);
  return {
    columns,
    rows: [...rows.values()].flatMap((cells) => {
      const first = cells[0]?.place;
      if (first === undefined || first.link === null) return [];
      const at = columns.map((column) => cells.find(({ place }) => columnOf(place) === columnOf(column))?.at ?? null);
      return [{ link: first.link, repeat: first.repeat, at }];
    }),
    lengths: indexed.filter(({ place }) => place.link === null).map(({ at }) => at),
  };
}

/** The place above or below one in the grid, in the same column; itself at an edge. */
export function besideInGrid(grid: PlaceGrid, at: number, by: 1 | -1): number {
  const row = grid.rows.findIndex((one) => one.at.includes(at));
  if (row < 0) {
    const among = grid.lengths.indexOf(at);
    const last = grid.rows.at(-1)?.at.find((one) => one !== null) ?? at;
    return grid.lengths[among + by] ?? (by < 0 ? last : at);
  }
  const column = grid.rows[row]?.at.indexOf(at) ?? 0;
  return grid.rows[row + by]?.at[column] ?? (by > 0 ? (grid.lengths[0] ?? at) : at);
}
