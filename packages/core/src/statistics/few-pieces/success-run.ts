import { nonparametricSampleSize } from './nonparametric-rank.ts';
import { plainPercent, plainPieces } from './plain-number.ts';
import { proportionInterval } from './proportion-interval.ts';
import { requireCount, requireShare } from './sample.ts';

export interface ProofRun {
  readonly n: number;
  readonly failures: number;
  readonly confidence: number;
  /** Share of all pieces that would pass the proof, at least; 0 where nothing follows. */
  readonly reliability: number;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * What a proof test of `n` pieces with `failures` promises of all others: the lower bound of the share that passes.
 * Without failures it is (1 - confidence)^(1/n), the success run; with failures the bound of Clopper and Pearson.
 */
export function proofRun(
  { n, failures }: { readonly n: number; readonly failures: number },
  { confidence }: { readonly confidence: number },
): ProofRun {
  requireCount(n);
  requireCount(failures);
  requireShare('the confidence', confidence);
  if (failures > n) throw new RangeError(`${failures} failures of ${n} pieces`);
  const reliability =
    failures === 0 && n > 0
      ? (1 - confidence) ** (1 / n)
      : proportionInterval({ count: n - failures, n }, { confidence, side: 'lower' }).lower;
  const method =
    failures === 0 ? 'Success run: (1 - confidence)^(1/n)' : 'Exact binomial bound (Clopper and Pearson, 1934)';
  const doubts = n === 0 ? ['No piece was tried.'] : [];
  return {
    n,
    failures,
    confidence,
    reliability,
    method,
    doubts,
    sentence: sentenceOf({ n, failures, confidence, reliability }),
  };
}

function sentenceOf(run: Pick<ProofRun, 'n' | 'failures' | 'confidence' | 'reliability'>): string {
  const { n, failures, confidence, reliability } = run;
  if (n === 0) return 'No piece was tried, so nothing is known of the others.';
  const seen = failures === 0 ? `${plainPieces(n)} passed and none failed` : `${failures} of ${plainPieces(n)} failed`;
  const capital = seen.charAt(0).toUpperCase() + seen.slice(1);
  if (reliability === 0) return `${capital}: that promises nothing of the others.`;
  return `${capital}: with ${plainPercent(confidence)} confidence at least ${plainPercent(reliability)} of all such pieces would pass.`;
}

/** The least number of pieces to pull so that at most `failuresAllowed` failures still show `reliability` with `confidence`. */
export function proofRunSize(demand: {
  readonly reliability: number;
  readonly confidence: number;
  readonly failuresAllowed?: number;
}): number {
  const { reliability, confidence, failuresAllowed = 0 } = demand;
  requireCount(failuresAllowed);
  return nonparametricSampleSize(failuresAllowed + 1, { coverage: reliability, confidence });
}
