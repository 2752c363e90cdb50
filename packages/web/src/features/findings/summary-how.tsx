import type { ProductFinding } from '@provinghouse/contract';
import { uncertaintyText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import type { SummaryKey } from './counted-pieces.tsx';
import type { HowFound } from './how-found.tsx';

const { how } = text.findings;

/** How well the mean of a summary is known, by its scatter alone. */
export function meanSure(product: ProductFinding, key: SummaryKey): string {
  const { n, sd, unit } = product[key];
  if (sd === null) return how.meanUnsure;
  const { mean } = product.inference;
  const standardError = key === 'breakingForce' && mean.standardError !== null ? mean.standardError : sd / Math.sqrt(n);
  const words = how.meanSure(uncertaintyText(standardError, unit));
  return key === 'breakingForce' ? `${words} ${mean.sentence}` : words;
}

/** How well a standard deviation of n values is known: about one over the root of twice n − 1 (JCGM 100:2008, E.4.3). */
export function scatterSure(n: number): string {
  return n < 2 ? how.meanUnsure : how.sdSure(`${Math.round(100 / Math.sqrt(2 * (n - 1)))}\u00a0%`);
}

interface Told {
  readonly sentence: string;
  readonly method: string;
  readonly doubts: readonly string[];
}

/** A statistic as core tells it, with what it was made of and how sure it is. */
export function toldHow(told: Told, inputs: HowFound['inputs'], sure: HowFound['sure']): HowFound {
  return { sentence: told.sentence, inputs, method: told.method, sure, doubts: told.doubts };
}
