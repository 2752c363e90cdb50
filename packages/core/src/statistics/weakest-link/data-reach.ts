import type { BreakModeFinding } from './break-mode.ts';
import type { ChainLength } from './chain-length.ts';
import type { PulledPiece } from './piece.ts';

/** What an answer for one length stands on. */
export interface DataReach {
  readonly length_m: number;
  readonly links: number;
  /** Links of the chain over links of the longest piece. */
  readonly timesLongestPiece: number;
  /** 'pieces': as long as what was pulled, and many were; 'form': on the Weibull form beyond them; 'prior': on the assumed shape as well. */
  readonly restsOn: 'pieces' | 'form' | 'prior';
  /** To be shown as loudly as the number itself; null when there is nothing to warn of. */
  readonly warning: string | null;
}

/** Breaks in the governing mode below which the assumed shape carries weight. */
const FEW_BREAKS = 5;
/** Above this the spread of ln(shape) is still mostly that of the prior. */
const MOSTLY_PRIOR = 0.5;
/** Beyond so many times the longest piece the form is on its own. */
const FAR = 3;
/** Pieces from which the 5 % point of like pieces is nearly within the data. */
const MANY = 20;

/** Whether the pieces can carry the finding for one length. */
export function dataReach(
  pieces: readonly PulledPiece[],
  modes: readonly BreakModeFinding[],
  chain: ChainLength,
): DataReach {
  const longest = Math.max(...pieces.map((piece) => piece.links));
  const times = chain.links / longest;
  const governing = modes.find((mode) => mode.mode === chain.shares[0]?.mode);
  const few = !governing || governing.breaks < FEW_BREAKS || governing.shapeSpreadKept > MOSTLY_PRIOR;
  const within = times <= 1 && (governing?.breaks ?? 0) >= MANY;
  const restsOn = within ? 'pieces' : few ? 'prior' : 'form';
  const base = { length_m: chain.length_m, links: chain.links, timesLongestPiece: times, restsOn } as const;
  return { ...base, warning: warningFor(base, pieces, governing) };
}

function warningFor(
  reach: Omit<DataReach, 'warning'>,
  pieces: readonly PulledPiece[],
  governing: BreakModeFinding | undefined,
): string | null {
  const pulled = `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'}`;
  const long = `${lengthInWords(reach)}, ${ratioInWords(reach.timesLongestPiece)} the longest piece pulled`;
  if (!governing)
    return `THE PULLS CANNOT CARRY THIS: none of ${pulled} broke. For ${long}, only a bound is given, and it rests on the assumed shape.`;
  if (reach.restsOn === 'prior') {
    const broke = `${count(governing.breaks)} of ${pulled} broke in the mode that governs (${governing.mode})`;
    return `THE PULLS ALONE CANNOT CARRY THIS: ${broke}, too few to know its scatter. For ${long}, the answer rests on the assumed shape.`;
  }
  if (reach.restsOn === 'form' && reach.timesLongestPiece > FAR) {
    return `BEYOND WHAT WAS PULLED: ${long}. The answer rests on the Weibull form holding so far below the forces seen; no pull has tested that.`;
  }
  return null;
}

function lengthInWords(reach: { readonly length_m: number; readonly links: number }): string {
  const length = reach.length_m < 1 ? reach.length_m.toFixed(2) : Number(reach.length_m.toPrecision(4)).toString();
  return `${length} m of chain (${reach.links} ${reach.links === 1 ? 'link' : 'links'})`;
}

function ratioInWords(times: number): string {
  return times >= 10 ? `${times.toFixed(0)} times` : `${times.toFixed(1)} times`;
}

function count(breaks: number): string {
  return Number.isInteger(breaks) ? String(breaks) : breaks.toFixed(1);
}
