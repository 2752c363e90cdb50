import type { ComparedGroup, ComparedPair } from './comparison.ts';
import { listWords, percentWords } from './plain-words.ts';
import type { RankProbability } from './rank-probability.ts';
import type { WelchAnova } from './welch-anova.ts';

/** A comparison told in plain sentences. */
export interface ComparisonSentences {
  /** Whether any differ. */
  readonly overall: string;
  /** Which are told apart and which are not. */
  readonly alike: string;
  /** Who is likeliest the best. */
  readonly order: string;
}

/** The sentences a report prints; single pairs carry their own. */
export function comparisonSentences(findings: {
  readonly groups: readonly ComparedGroup[];
  readonly welch: WelchAnova;
  readonly pairs: readonly ComparedPair[];
  readonly order: RankProbability;
  readonly confidence: number;
  readonly unit: string;
}): ComparisonSentences {
  return { overall: overall(findings), alike: alike(findings), order: findings.order.sentence };
}

function overall({ welch, confidence }: { readonly welch: WelchAnova; readonly confidence: number }): string {
  if (welch.p === null) return welch.sentence;
  const verdict =
    welch.p < 1 - confidence
      ? 'That is too seldom to blame on scatter: at least one differs from the others.'
      : 'Scatter alone may explain it: no difference has been shown, which does not show that they are equal.';
  return `${welch.sentence} ${verdict}`;
}

function alike(findings: {
  readonly groups: readonly ComparedGroup[];
  readonly pairs: readonly ComparedPair[];
  readonly confidence: number;
}): string {
  const judged = findings.pairs.filter((pair) => pair.distinguishable !== null);
  if (judged.length === 0) return 'No pair could be judged.';
  const apart = judged.filter((pair) => pair.distinguishable).length;
  const level = percentWords(findings.confidence);
  if (apart === 0)
    return `No two of ${listWords(namesOf(findings.groups))} are distinguishable (${level}, all pairs jointly).`;
  const sets = setsOf(findings.groups).filter((names) => names.length > 1);
  const count = judged.length === 1 ? 'The pair is told apart' : `${apart} of ${judged.length} pairs are told apart`;
  if (sets.length === 0) return `${count} (${level}, all pairs jointly).`;
  const groups = sets.map((names) => listWords(names)).join('; ');
  return `${count} (${level}, all pairs jointly). Not distinguishable from one another: ${groups}.`;
}

function namesOf(groups: readonly ComparedGroup[]): string[] {
  return groups.filter((group) => group.letters !== '').map((group) => group.name);
}

/** The names that share each letter. */
function setsOf(groups: readonly ComparedGroup[]): string[][] {
  const byLetter = new Map<string, string[]>();
  for (const { name, letters } of groups) {
    for (const letter of letters.match(/[a-z]\d*/g) ?? []) {
      byLetter.set(letter, [...(byLetter.get(letter) ?? []), name]);
    }
  }
  return [...byLetter.values()];
}
