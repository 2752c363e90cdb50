import type { ZincSurvey } from '@provinghouse/core';
import { uncertaintyText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import type { HowFound } from './how-found.tsx';

const { how } = text.findings;

/** How a mean thickness of zinc came about. */
export function zincMeanHow(zinc: ZincSurvey | null): HowFound {
  const u = zinc?.standardUncertainty_um ?? null;
  return {
    inputs: how.readings(zinc?.readings ?? 0),
    method: how.zincMean,
    sure: u === null ? how.zincNoSure : how.zincMeanSure(uncertaintyText(2 * u, 'um')),
  };
}
