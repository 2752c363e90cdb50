import { normalDensity } from '../statistics/distribution/index.ts';
import { conformanceProbability } from './conformance-probability.ts';
import type { ConformityDecision } from './conformity.ts';
import { percent } from './conformity-sentence.ts';
import { standingOf } from './judge.ts';
import { evenEdges, panelIntegral } from './panel-integral.ts';
import type { Verdict } from './verdict.ts';

/** A requirement that every piece must meet. */
export interface AllPiecesDecision {
  readonly verdict: Verdict;
  /** Chance that all true values conform; null where a piece has none. */
  readonly probability: number | null;
  /** Pieces by verdict. */
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

/**
 * Joins the decisions on single pieces: one failure fails the requirement, else one doubt leaves it inconclusive.
 *
 * The chance that all conform counts the part of the uncertainty that all pieces share (calibration) once: given that common error the
 * pieces are independent, and the product is averaged over it. Without `commonStandardUncertainty` it is the plain product.
 */
export function decideAllPieces(
  decisions: readonly ConformityDecision[],
  commonStandardUncertainty = 0,
): AllPiecesDecision {
  if (!(commonStandardUncertainty >= 0)) throw new RangeError('a standard uncertainty is not below 0');
  const count = (verdict: Verdict) => decisions.filter((decision) => decision.verdict === verdict).length;
  const counts = {
    conforms: count('conforms'),
    'does not conform': count('does not conform'),
    inconclusive: count('inconclusive'),
    'not judged': count('not judged'),
  };
  const verdict = standingOf(decisions.map((decision) => decision.verdict));
  const probability = chanceOfAll(decisions, commonStandardUncertainty);
  const judged = decisions.length - counts['not judged'];
  const chance = probability === null ? '' : ` The chance that all truly conform is ${percent(probability)}.`;
  return {
    verdict,
    probability,
    counts,
    doubts:
      counts['not judged'] === 0 ? [] : [`${counts['not judged']} of ${decisions.length} pieces were not judged.`],
    method: 'Each piece by itself (JCGM 106:2012 7, 8); common error integrated over a normal distribution',
    sentence:
      judged === 0
        ? 'No piece could be judged.'
        : `Of ${judged} pieces judged ${counts.conforms} conform, ${counts['does not conform']} do not and ${counts.inconclusive} stay inconclusive: the requirement on all pieces is ${verdict === 'conforms' ? 'met' : verdict === 'inconclusive' ? 'neither met nor failed' : 'not met'}.${chance}`,
  };
}

function chanceOfAll(decisions: readonly ConformityDecision[], common: number): number | null {
  const pieces = decisions.filter(({ conformance }) => conformance !== null);
  if (pieces.length === 0 || pieces.length < decisions.length) return null;
  if (common === 0) return pieces.reduce((product, { conformance }) => product * (conformance?.probability ?? 0), 1);
  const given = (shift: number) => pieces.reduce((product, piece) => product * shifted(piece, shift, common), 1);
  const cuts = pieces.flatMap(({ value, limits }) =>
    [limits.lower, limits.upper].flatMap((limit) => (limit === null ? [] : [(limit - value.value) / common])),
  );
  const edges = [...evenEdges(-8, 8, 0.5), ...cuts.filter((cut) => Math.abs(cut) < 8)];
  return Math.min(
    1,
    panelIntegral((z) => normalDensity(z) * given(z * common), edges),
  );
}

/** Chance that one piece conforms when the common error is known to be `shift`. */
function shifted({ value, limits }: ConformityDecision, shift: number, common: number): number {
  const own = Math.sqrt(Math.max(0, (value.standardUncertainty ?? 0) ** 2 - common ** 2));
  return conformanceProbability({ value: value.value + shift, standardUncertainty: own }, limits)?.probability ?? 1;
}
