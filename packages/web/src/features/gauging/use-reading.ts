import { type GaugingInput, type GaugingPlace, placeKey } from '@provinghouse/core';
import { type KeyboardEvent, type RefObject, useCallback, useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { hrefs } from '../../lib/route.ts';
import { type DeskState, entryOf } from './desk-state.ts';
import { gaugingRow, type PieceAtDesk, readingsOfProduct, toInput } from './gauging-desk.ts';
import { keepReadings } from './gauging-log.ts';
import {
  besideInGrid,
  gridOf,
  isSamePlace,
  nextOpen,
  nextPiece,
  type PlaceGrid,
  placeToRead,
} from './gauging-progress.ts';
import { keyMeaning } from './key-meaning.ts';
import { skipPlace } from './skipped-places.ts';
import { readReading, type TypedReading } from './typed-reading.ts';
import { useUndo } from './use-undo.ts';

/** The place at hand of a piece and what can be done there. */
export interface ReadingAtPlace {
  /** Index in the schedule; null where every place is read. */
  readonly index: number | null;
  /** The place as it will be written down: an unread one, or the next repeat of one. */
  readonly place: GaugingPlace | null;
  readonly isAgain: boolean;
  readonly grid: PlaceGrid;
  readonly inputs: readonly (GaugingInput & { readonly repeat: number })[];
  /** What is needed before anything can be kept: who reads, with what, and why without a certificate. */
  readonly isReady: boolean;
  readonly read: (typed: string) => TypedReading;
  readonly keep: (value_mm: number, said: readonly string[]) => void;
  readonly moveTo: (index: number | null) => void;
  readonly again: () => void;
  readonly skip: () => void;
  /** Takes the last reading of this window back; null where there is none. */
  readonly undo: (() => void) | null;
  readonly onKey: (event: KeyboardEvent) => boolean;
}

/** Leads through the places of a piece: each reading kept is the way to the next place, and the last to the next piece. */
export function useReading(desk: DeskState, at: PieceAtDesk, box: RefObject<HTMLInputElement | null>): ReadingAtPlace {
  const { code, pieces, kit, person } = desk;
  const { piece, progress } = at;
  const [index, setIndex] = useState(() => nextOpen(progress, -1));
  /** Where to go on after a place that was read once more. */
  const [back, setBack] = useState<number | null>(null);
  const [, navigate] = useLocation();
  const inputs = useMemo(() => at.readings.map(({ row }) => toInput(row)), [at.readings]);
  const ofProduct = useMemo(() => readingsOfProduct(pieces, at), [pieces, at]);
  const grid = useMemo(() => gridOf(progress.places), [progress.places]);
  const scheduled = index === null ? null : (progress.places[index] ?? null);
  const place = scheduled === null ? null : placeToRead(scheduled, inputs);
  const moveTo = useCallback(
    (next: number | null, then: number | null = null) => {
      setIndex(next);
      setBack(then);
      box.current?.focus();
    },
    [box],
  );
  const choose = useCallback((next: number | null) => moveTo(next), [moveTo]);
  const toPiece = (next: string | null) => {
    if (next === null) moveTo(null);
    else navigate(hrefs.gaugingOf(code, next));
  };
  const goOn = (read: ReadonlySet<string>, skipped: ReadonlySet<string>) => {
    const next = back ?? nextOpen({ ...progress, read, skipped }, index ?? -1);
    if (next === null) toPiece(nextPiece(pieces, piece));
    else moveTo(next);
  };
  const keep = (value_mm: number, said: readonly string[]) => {
    if (place === null || kit.chosen === null || person === null) return;
    const read = { piece, value_mm, instrument: kit.chosen, by: person, read_at: new Date().toISOString() };
    keepReadings({ book: code, request: entryOf([gaugingRow(place, read)], desk), words: said });
    goOn(new Set([...progress.read, placeKey(place)]), progress.skipped);
  };
  const skip = () => {
    if (scheduled === null) return;
    skipPlace(code, piece, placeKey(scheduled));
    goOn(progress.read, new Set([...progress.skipped, placeKey(scheduled)]));
  };
  const undo = useUndo({ desk, at, moveTo });
  const again = () => {
    const last = undo.last?.piece === piece ? toInput(undo.last) : null;
    const found = last === null ? -1 : progress.places.findIndex((one) => isSamePlace(one, last));
    if (found >= 0) moveTo(found, back ?? index);
  };
  const along = (by: 1 | -1) => {
    const count = progress.places.length;
    moveTo(Math.min(count - 1, Math.max(0, (index ?? (by > 0 ? -1 : count)) + by)));
  };
  return {
    index,
    place,
    isAgain: place !== null && place.repeat !== scheduled?.repeat,
    grid,
    inputs,
    isReady: kit.chosen !== null && person !== null && (!kit.isOpen || kit.reason !== null),
    read: (typed) => {
      if (place === null) return { ok: false, fault: '' };
      return readReading(typed, { place, piece: at, ofProduct, instrument: kit.instrument, by: person ?? '' });
    },
    keep,
    moveTo: choose,
    again,
    skip,
    undo: undo.last === null ? null : undo.take,
    onKey: keyMeaning({
      again,
      skip,
      undo: undo.take,
      along,
      across: (by) => moveTo(index === null ? 0 : besideInGrid(grid, index, by)),
      piece: (by) => {
        const next = pieces[pieces.indexOf(at) + by];
        if (next) toPiece(next.piece);
      },
    }),
  };
}
