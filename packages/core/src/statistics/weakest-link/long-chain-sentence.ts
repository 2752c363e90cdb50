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
  const [first] = chain.shares;
  if (!first || first.mode === 'any') return null;
  if (chain.shares.length === 1) return `All breaks seen were in the ${first.mode}.`;
  const sure = first.share >= 0.75 ? 'will govern' : 'is the likelier to govern';
  return `The ${first.mode} ${sure}: about ${tenths(first.share)} ten such ${length} chains would part there.`;
}

function tenths(share: number): string {
  const words = ['none in', '1 in', '2 in', '3 in', '4 in', '5 in', '6 in', '7 in', '8 in', '9 in', 'nearly all of'];
  return words[Math.round(10 * share)] ?? 'some of';
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
  const [most] = modes;
  const governing = longest.shares[0]?.mode;
  const turns =
    most && governing && governing !== most.mode
      ? ` Most pieces broke in the ${most.mode}, yet over ${lengthInWords(longest.length_m)} the ${governing} is the weakest link.`
      : '';
  const looked = modes.length > 0 && unseen.length > 0 ? unseenSentence(longest, unseen) : '';
  return `${sentenceFor(longest, confidence)}${turns}${looked}`;
}

function unseenSentence(chain: ChainLength, unseen: readonly BreakModeFinding[]): string {
  const bound = chain.exceeded[0]?.boundWithUnseen_kN;
  if (bound === null || bound === undefined) return '';
  const names = unseen.map((mode) => mode.mode).join(' or ');
  return ` No piece broke in the ${names}; allowing for what so few links cannot rule out there, the bound is ${force(bound)}.`;
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
