import type { PieceFinding, PullFinding, Row } from '@provinghouse/contract';
import {
  type BreakReading,
  combine,
  type DecisionRule,
  examinersDiffer,
  type GaugingReading,
  gaugePiece,
  type Judgement,
  judge,
  type Limit,
  notJudged,
  type Specification,
  standingOf,
} from '@provinghouse/core';
import { type Claim, splitOf } from './claim.ts';
import { bareSteel, dimensionOf } from './dimension.ts';
import { campaignRow, type Evidence } from './evidence.ts';
import { judgePull, type PulledPiece } from './pull.ts';
import { zincOf } from './zinc.ts';

/** Judges one piece: gauging, pull, break and zinc against every limit of its specification. */
export function judgePiece(row: Row<'pieces'>, claim: Claim, evidence: Evidence): PieceFinding {
  const { rows } = evidence;
  const zinc = zincOf(rows, [row.piece]);
  const readings = rows.gauging.filter((reading) => reading.piece === row.piece);
  const steel = bareSteel(row, { readings, zinc, instruments: rows });
  const gauging =
    steel.readings.length === 0 ? null : gaugePiece({ ...steel, nominalSize_mm: claim.product.nominal_size_mm });
  const length = gaugeLengthOf(row, gauging, claim.specification);
  const pulls = rows.pulls.filter((pull) => pull.piece === row.piece);
  const breaks = breaksOf(pulls, rows.breaks);
  const pulled: PulledPiece = { links: row.links, nominalSize_mm: claim.product.nominal_size_mm, ...length, breaks };
  const pull = pulls[0] ? judgePull(pulls[0], pulled, evidence) : null;
  const rule = campaignRow(rows).decision_rule as DecisionRule; // the table allows these two words only
  const judgements = claim.specification.limits
    .filter((limit) => limit.quantity !== 'workingLoadLimit')
    .map((limit) =>
      judgeLimit(limit, rule, { pull, gauging, unknownZinc: steel.unknownZinc, links: row.links }, evidence),
    );
  return {
    piece: row.piece,
    product: claim.product.product,
    sample: row.sample,
    links: row.links,
    gaugeLength_mm: length.gaugeLength_mm,
    gaugeLengthOrigin: length.gaugeLengthOrigin,
    gauging,
    gaugingReadings: readings,
    pull,
    otherPulls: pulls.slice(1).map((other) => other.pull),
    split: splitOf(
      claim,
      forceOf(pull),
      gauging && { area_mm2: gauging.steelArea_mm2, uncertainty_mm2: gauging.steelAreaUncertainty_mm2 },
    ),
    breaks,
    examinersDiffer: examinersDiffer(breaks),
    zinc,
    judgements,
    standing: standingOf(
      judgements.map((judgement) => judgement.verdict),
      judgements
        .filter((judgement) => judgement.limit.quantity === 'breakingForce')
        .map((judgement) => judgement.verdict),
    ),
    note: row.note,
  };
}

interface PieceEvidence {
  readonly pull: PullFinding | null;
  readonly gauging: GaugingReading | null;
  readonly unknownZinc: boolean;
  readonly links: number;
}

function judgeLimit(limit: Limit, rule: DecisionRule, piece: PieceEvidence, evidence: Evidence): Judgement {
  switch (limit.quantity) {
    case 'breakingForce':
    case 'proofForce':
    case 'elongation':
      return judgePulled(limit, rule, piece.pull);
    case 'massPerMetre':
      return notJudged(
        limit,
        rule,
        'The specification gives an approximate mass only; see the product for the mass found.',
      );
    case 'bendDeflection':
      return notJudged(limit, rule, 'No bend test was made in this campaign.');
    case 'workingLoadLimit':
      return notJudged(limit, rule, 'A rating for use, not a requirement on a test piece.');
    default:
      return judgeGauged(limit, rule, piece, evidence);
  }
}

function judgePulled(limit: Limit, rule: DecisionRule, pull: PullFinding | null): Judgement {
  if (!pull) return notJudged(limit, rule, 'The piece was not pulled.');
  if (pull.use === 'none') return notJudged(limit, rule, pull.reasons.join(' '));
  if (limit.quantity === 'elongation') {
    return pull.elongation
      ? judge(limit, pull.elongation, rule)
      : notJudged(limit, rule, 'The pull shows no elongation: its trace has no usable extension or table signal.');
  }
  return judge(limit, pull.maximum, rule);
}

function judgeGauged(limit: Limit, rule: DecisionRule, piece: PieceEvidence, evidence: Evidence): Judgement {
  if (!piece.gauging) return notJudged(limit, rule, 'The piece was not gauged.');
  if (piece.unknownZinc && (limit.quantity === 'diameter' || limit.quantity === 'weldDiameter')) {
    return notJudged(limit, rule, 'Gauged over zinc of unrecorded thickness: the steel under it cannot be told.');
  }
  if (limit.quantity === 'lengthOverLinks' && limit.links !== null && limit.links > piece.links) {
    return notJudged(limit, rule, `The limit is over ${limit.links} links; this piece has ${piece.links}.`);
  }
  const value = dimensionOf(limit, piece.gauging, campaignRow(evidence.rows).coverage_factor);
  return value ? judge(limit, value, rule) : notJudged(limit, rule, 'It was not gauged.');
}

function breaksOf(pulls: readonly Row<'pulls'>[], breaks: readonly Row<'breaks'>[]): BreakReading[] {
  const first = pulls[0]?.pull;
  return breaks
    .filter((row) => row.pull === first)
    .map(({ link, examiner, position, mode, note }) => ({ link, examiner, position, mode, note }));
}

interface GaugeLength {
  readonly gaugeLength_mm: number;
  readonly gaugeLengthUncertainty_mm: number;
  readonly gaugeLengthOrigin: string;
}

/** Sum of the inside lengths of the free links: as measured at the preload, else from the gauged pitch, else from the nominal pitch. */
function gaugeLengthOf(row: Row<'pieces'>, gauging: GaugingReading | null, specification: Specification): GaugeLength {
  const pitch = gauging?.quantities.find((quantity) => quantity.quantity === 'pitch');
  const limit = specification.limits.find((candidate) => candidate.quantity === 'pitch');
  if (row.gauge_length_mm !== null) {
    return {
      gaugeLength_mm: row.gauge_length_mm,
      gaugeLengthUncertainty_mm: 0.5,
      gaugeLengthOrigin: 'measured at the preload',
    };
  }
  if (pitch) {
    return {
      gaugeLength_mm: pitch.mean_mm * row.links,
      gaugeLengthUncertainty_mm: (pitch.sd_mm ?? pitch.standardUncertainty_mm ?? 0) * Math.sqrt(row.links),
      gaugeLengthOrigin: `${row.links} links of the mean gauged pitch`,
    };
  }
  const nominal = limit?.nominal ?? 3 * specification.nominalSize_mm;
  const half = limit?.upper == null ? 0.03 * nominal : limit.upper - nominal;
  return {
    gaugeLength_mm: nominal * row.links,
    gaugeLengthUncertainty_mm: (half / Math.sqrt(3)) * row.links,
    gaugeLengthOrigin: `${row.links} links of the nominal pitch, not measured`,
  };
}

function forceOf(pull: PullFinding | null) {
  if (!pull?.maximum) return null;
  const { value, isAtLeast, contributions } = pull.maximum;
  return { value, isAtLeast, standardUncertainty: combine(contributions) };
}
