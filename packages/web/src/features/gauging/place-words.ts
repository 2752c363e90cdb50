import type { GaugingPlace } from '@provinghouse/core';
import { text } from '../../lib/text.ts';

const words = text.gaugingDesk.place;

/** What is read at a place: `bar diameter, at right angles`. */
export function quantityWords(place: Omit<GaugingPlace, 'link' | 'repeat'>): string {
  const { quantity, position, direction, overLinks } = place;
  if (quantity === 'lengthOverLinks') return words.over(overLinks);
  const name = quantity === 'diameter' && position === 'crown' ? words.crown : words.quantity[quantity];
  return isTurned(place) || direction > 1 ? `${name}, ${words.direction(direction)}` : name;
}

/** A place in one line: `Link 3, bar diameter, at right angles`. */
export function placeWords(place: GaugingPlace): string {
  const again = place.repeat > 1 ? `, ${words.repeat(place.repeat)}` : '';
  return `${words.link(place.link)}, ${quantityWords(place)}${again}`;
}

/** How the calliper is held. */
export function holdWords({ quantity, position, direction }: GaugingPlace): string {
  if (quantity !== 'diameter' && quantity !== 'weldDiameter') return words.ofLink[quantity];
  return words.how[position][Math.min(direction, 2) - 1] ?? '';
}

/** A place that is read in two directions. */
function isTurned({ quantity }: Pick<GaugingPlace, 'quantity'>): boolean {
  return quantity === 'diameter' || quantity === 'weldDiameter';
}

/** A value as it was read: never rounded. */
export function readingText(value_mm: number): string {
  const typed = String(value_mm);
  return typed.includes('.') ? typed.padEnd(typed.indexOf('.') + 3, '0') : `${typed}.00`;
}
