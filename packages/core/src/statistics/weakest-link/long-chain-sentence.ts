import type { BreakModeFinding } from './break-mode.ts';
import type { ChainLength } from './chain-length.ts';

/** One length in one or two sentences. */
export function sentenceFor(chain: ChainLength, confidence: number): string {
  const [common] = chain.exceeded;
  if (!common) return '';
  const length = lengthInWords(chain.length_m);
  const bound = `With ${percent(confidence)} confidence, ${percent(common.survival)} of ${length} chains hold more than ${force(common.bound_kN)}`;
  if (common.estimate_kN === null) return `${bound}; nothing broke, so there is no estimate.`;
  const best = `${bound} (best estimate ${force(common.estimate_kN)}).`;
  const governs = governingSentence(chain, length);
  return governs === null ? best : `${best} ${governs}`;
}

function governingSentence(chain: ChainLength, length: string): string | null {
  const groups = weldsTogether(chain);
  const [first] = groups;
  if (!first || chain.shares[0]?.mode === 'any') return null;
  if (groups.length === 1) return `All breaks seen were in the ${first.words}.`;
  const sure = first.share >= 0.75 ? 'will govern' : 'is the likelier to govern';
  return `The ${first.words} ${sure}: ${tenths(first.share)} such ${length} chains would part there.`;
}

const joints: readonly string[] = ['weld', 'beside weld'];

/** Shares with breaks in and beside the weld as one, since one cause is behind both; the likeliest first. */
function weldsTogether(chain: ChainLength): { readonly words: string; readonly share: number }[] {
  const welds = chain.shares.filter(({ mode }) => joints.includes(mode));
  const others = chain.shares.filter(({ mode }) => !joints.includes(mode));
  const groups = others.map(({ mode, share }) => ({ words: mode, share }));
  if (welds.length > 0) {
    const share = welds.reduce((sum, weld) => sum + weld.share, 0);
    groups.push({ words: welds.length > 1 ? 'weld or the steel beside it' : modeInWords(welds[0]?.mode ?? ''), share });
  }
  return groups.sort((x, y) => y.share - x.share);
}

function modeInWords(mode: string): string {
  return mode === 'beside weld' ? 'steel beside the weld' : mode;
}

function tenths(share: number): string {
  const count = Math.round(10 * share);
  return count >= 10 ? 'nearly all' : `about ${count} in ten`;
}

export interface LongChainWords {
  readonly lengths: readonly ChainLength[];
  readonly modes: readonly BreakModeFinding[];
  readonly unseen: readonly BreakModeFinding[];
  readonly confidence: number;
}

/** The finding in the words of the longest length asked for, and of the change of mode between the shortest and it. */
export function longChainSentence({ lengths, modes, unseen, confidence }: LongChainWords): string {
  const sorted = lengths.toSorted((a, b) => a.links - b.links);
  const longest = sorted.at(-1);
  if (!longest) return 'No length was asked for.';
  const governing = modes.find((mode) => mode.mode === longest.shares[0]?.mode);
  const most = modes.find((mode) => governing && mode.breaks > governing.breaks);
  const turns =
    most && governing
      ? ` More pieces broke in the ${modeInWords(most.mode)} than in the ${modeInWords(governing.mode)}, yet over ${lengthInWords(longest.length_m)} the ${modeInWords(governing.mode)} is the weakest link.`
      : '';
  const looked = modes.length > 0 && unseen.length > 0 ? unseenSentence(longest, unseen) : '';
  return `${sentenceFor(longest, confidence)}${turns}${looked}`;
}

function unseenSentence(chain: ChainLength, unseen: readonly BreakModeFinding[]): string {
  const ofSeen = chain.exceeded[0]?.boundOfSeenModes_kN;
  if (ofSeen === null || ofSeen === undefined) return '';
  const names = unseen.map((mode) => modeInWords(mode.mode)).join(' or the ');
  return ` No piece broke in the ${names}, but so few links cannot rule it out, and the bound allows for it; without that it would be ${force(ofSeen)}.`;
}

function force(value: number): string {
  return `${Number(value.toPrecision(3))} kN`;
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(3))} %`;
}

function lengthInWords(length_m: number): string {
  return `${Number(length_m.toPrecision(3))} m`;
}
