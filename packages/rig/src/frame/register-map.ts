import type { RegisterType, WordOrder } from './register.ts';
import { registerWidth } from './register.ts';
import type { RegisterNumber } from './register-ring.ts';

/** Where one channel lies in a device's registers. Value on the wire x scale + shift = value in `unit`. */
export interface RegisterPlace {
  readonly channel: string;
  /** Address as it goes over the wire, counted from 0. */
  readonly address: number;
  readonly type: RegisterType;
  readonly wordOrder: WordOrder;
  readonly scale: number;
  readonly shift: number;
  readonly kind: 'holding' | 'input';
}

/** One request: registers of one kind that lie close together. */
export interface RegisterRequest {
  readonly kind: 'holding' | 'input';
  readonly from: number;
  readonly count: number;
  readonly places: readonly RegisterPlace[];
}

/** Most registers one request may ask for (Modbus application protocol 6.3, 6.4). */
const MOST_REGISTERS = 125;
/** Registers between two places that are read along rather than asked for anew. */
const GAP = 8;

function endOf(place: RegisterNumber): number {
  return place.address + registerWidth(place.type);
}

function requestWithClock(
  places: readonly RegisterPlace[],
  clock: RegisterNumber,
  kind: 'holding' | 'input',
): readonly RegisterRequest[] {
  const all = [...places, clock];
  const from = Math.min(...all.map(({ address }) => address));
  const count = Math.max(...all.map(endOf)) - from;
  return count > MOST_REGISTERS ? [] : [{ kind, from, count, places }];
}

/**
 * The fewest requests that read every place, neighbours together so that they are of one moment. A clock has to be of the same moment as what it
 * times, so with one there is a single request, or none.
 */
export function registerRequests(places: readonly RegisterPlace[], clock?: RegisterNumber): readonly RegisterRequest[] {
  const first = places[0];
  if (clock && first) return requestWithClock(places, clock, first.kind);
  const requests: { kind: 'holding' | 'input'; from: number; end: number; places: RegisterPlace[] }[] = [];
  for (const place of places.toSorted((a, b) => a.kind.localeCompare(b.kind) || a.address - b.address)) {
    const last = requests.at(-1);
    const fits =
      last && last.kind === place.kind && place.address - last.end <= GAP && endOf(place) - last.from <= MOST_REGISTERS;
    if (last && fits) {
      last.end = Math.max(last.end, endOf(place));
      last.places.push(place);
    } else requests.push({ kind: place.kind, from: place.address, end: endOf(place), places: [place] });
  }
  return requests.map(({ kind, from, end, places: inside }) => ({ kind, from, count: end - from, places: inside }));
}
