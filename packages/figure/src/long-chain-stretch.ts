import type { ChainLength, LongChainFinding, PulledPiece } from '@provinghouse/core';

/** What an answer rests on: the pieces pulled, the Weibull form beyond them, or the assumed shape as well. */
export type Reach = 'pieces' | 'form' | 'prior';

export interface ReachStretch {
  readonly reach: Reach;
  /** Neighbouring stretches share the length at which they meet. */
  readonly curve: readonly ChainLength[];
}

interface Given {
  readonly finding: Pick<LongChainFinding, 'curve' | 'lengths'>;
  readonly pieces: readonly PulledPiece[];
}

const weakness: Readonly<Record<Reach, number>> = { pieces: 0, form: 1, prior: 2 };

/**
 * What carries each length of the curve. Whether a mode has breaks enough to know its scatter is a finding of core for the
 * lengths asked, and holds for every length that the mode governs; a mode governing none of them is taken as not known.
 */
export function reachesAlong({ finding, pieces }: Given): Reach[] {
  const longest = Math.max(0, ...pieces.map((piece) => piece.links));
  return finding.curve.map((chain) => reachOf(chain, finding, longest));
}

/** The curve cut where what carries it changes; the way between two lengths is carried no better than the weaker of them. */
export function reachStretches(given: Given): ReachStretch[] {
  const { curve } = given.finding;
  const reaches = reachesAlong(given);
  const stretches: ReachStretch[] = [];
  let from = 0;
  for (let at = 1; at <= curve.length; at += 1) {
    const [last, next] = [reaches[at - 1], reaches[at]];
    if (last === undefined || last === next) continue;
    const isWeaker = next === undefined || weakness[next] > weakness[last];
    const meeting = isWeaker ? at - 1 : at;
    stretches.push({ reach: last, curve: curve.slice(from, meeting + 1) });
    from = meeting;
  }
  return stretches;
}

function reachOf(chain: ChainLength, { lengths }: Given['finding'], longest: number): Reach {
  const alike = lengths.filter((asked) => asked.shares[0]?.mode === chain.shares[0]?.mode);
  if (alike.length === 0 || alike.some(({ reach }) => reach.restsOn === 'prior')) return 'prior';
  return chain.links <= longest ? 'pieces' : 'form';
}

export interface GoverningStretch {
  readonly mode: string;
  readonly from_m: number;
  readonly to_m: number;
}

/** Which mode governs where; it changes midway, in the logarithm, between two lengths of the curve. Empty when nothing broke. */
export function governingStretches(curve: readonly ChainLength[]): GoverningStretch[] {
  const stretches: GoverningStretch[] = [];
  curve.forEach((chain, index) => {
    const mode = chain.shares[0]?.mode;
    const last = stretches.at(-1);
    if (mode === undefined) return;
    if (last?.mode === mode) {
      stretches[stretches.length - 1] = { ...last, to_m: chain.length_m };
      return;
    }
    const before = curve[index - 1];
    const turn =
      last === undefined || before === undefined ? chain.length_m : Math.sqrt(before.length_m * chain.length_m);
    if (last !== undefined) stretches[stretches.length - 1] = { ...last, to_m: turn };
    stretches.push({ mode, from_m: turn, to_m: chain.length_m });
  });
  return stretches;
}
