import type { Citation, Limit } from '@provinghouse/core';

/** The sources of some limits, each once, in the order in which they are first named: their places are their numbers. */
export function citationsOf(limits: readonly Pick<Limit, 'provenance'>[]): readonly Citation[] {
  const all = limits.flatMap(({ provenance }) => provenance.citations);
  return [...new Map(all.map((citation) => [citation.id, citation] as const)).values()];
}
