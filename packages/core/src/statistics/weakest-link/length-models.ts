import { chiSquaredUpper } from '../distribution/index.ts';
import { type ModeRecord, modeRecord } from './mode-record.ts';
import type { PulledPiece } from './piece.ts';
import { fitPooledShape } from './pooled-shape.ts';
import { fitWeibull } from './weibull-fit.ts';

/** How strength falls with length, in four models of growing freedom. */
export interface LengthModels {
  /** One law per link, lengths by the weakest link. */
  readonly weakestLink: LengthModel | null;
  /** One shape; scale falls with a power of the length that is not tied to the shape. */
  readonly powerOfLength: (LengthModel & { readonly exponent: number }) | null;
  /** One shape, a scale for each length. */
  readonly freeScales: LengthModel | null;
  /** A law for each length. */
  readonly freeLaws: LengthModel | null;
  /** Weakest link against a power of the length: 1 degree of freedom. */
  readonly againstPower: RatioTest | null;
  /** Weakest link against a law for each length. */
  readonly againstFreeLaws: RatioTest | null;
  readonly lengths: readonly number[];
  readonly method: string;
}

export interface LengthModel {
  readonly shape: number | null;
  readonly scale_kN: number | null;
  readonly logLikelihood: number;
}

export interface RatioTest {
  readonly ratio: number;
  readonly degrees: number;
  /** Chance of a ratio this great if the weakest-link law held. */
  readonly pValue: number;
}

const method =
  'likelihood ratios of nested Weibull models against chi-squared (after Watson and Smith, Journal of Materials Science 20 (1985) 3260-3270; from memory)';

/**
 * Whether the pieces, pulled in at least two lengths, agree with the weakest-link law in `mode` (null: all breaks). Each length needs two breaks
 * or more for the models that free it; what cannot be fitted is null.
 */
export function compareLengthModels(pieces: readonly PulledPiece[], mode: string | null): LengthModels {
  const lengths = [...new Set(pieces.map((piece) => piece.links))].sort((a, b) => a - b);
  const groups = lengths.map((links) => pieces.filter((piece) => piece.links === links));
  const records = groups.map((group) => modeRecord(group, mode));
  const whole = pieces.length > 0 ? modeRecord(pieces, mode) : null;
  const weakestLink = whole ? weakestLinkModel(whole) : null;
  const several = lengths.length > 1 && records.every((record) => record.breakCount > 1);
  const powerOfLength = several && whole ? powerModel(whole) : null;
  const freeLaws = several ? freeLawModel(records) : null;
  return {
    weakestLink,
    powerOfLength,
    freeScales: several ? freeScaleModel(records) : null,
    freeLaws,
    againstPower: ratioTest(weakestLink, powerOfLength, 1),
    againstFreeLaws: ratioTest(weakestLink, freeLaws, 2 * lengths.length - 2),
    lengths,
    method,
  };
}

function ratioTest(narrow: LengthModel | null, wide: LengthModel | null, degrees: number): RatioTest | null {
  if (!narrow || !wide) return null;
  const ratio = Math.max(0, 2 * (wide.logLikelihood - narrow.logLikelihood));
  return { ratio, degrees, pValue: chiSquaredUpper(ratio, degrees) };
}

function weakestLinkModel(record: ModeRecord): LengthModel | null {
  const { fit } = fitWeibull(record);
  return fit && { shape: fit.shape, scale_kN: fit.scale_kN, logLikelihood: fit.logLikelihood };
}

function freeScaleModel(records: readonly ModeRecord[]): LengthModel | null {
  const pooled = fitPooledShape(records);
  return pooled.logLikelihood === null
    ? null
    : { shape: pooled.shape, scale_kN: null, logLikelihood: pooled.logLikelihood };
}

function freeLawModel(records: readonly ModeRecord[]): LengthModel | null {
  let sum = 0;
  for (const record of records) {
    const { fit } = fitWeibull(record);
    if (!fit) return null;
    sum += fit.logLikelihood;
  }
  return { shape: null, scale_kN: null, logLikelihood: sum };
}

/**
 * Hazard rate n^k F^b: the profile log likelihood r ln b + b sum(ln F) + k sum(ln n) - r ln sum(n^k F^b) is concave in (b, k), so Newton's
 * steps with halving find its summit. The weakest-link law has k = 1; the scale falls as n^(-k/b).
 */
function powerModel(record: ModeRecord): (LengthModel & { exponent: number }) | null {
  const start = fitWeibull(record).fit;
  if (!start) return null;
  let at = powerAt(record, start.shape, 1);
  for (let step = 0; step < 100; step++) {
    const determinant = at.bb * at.kk - at.bk * at.bk;
    if (!(determinant > 0)) return null;
    const db = (at.kk * at.gb - at.bk * at.gk) / determinant;
    const dk = (at.bb * at.gk - at.bk * at.gb) / determinant;
    let share = at.b + db > 0 ? 1 : 0.5 * Math.abs(at.b / db);
    let next = powerAt(record, at.b + share * db, at.k + share * dk);
    while (next.height < at.height - 1e-12 * Math.abs(at.height) && share > 1e-6) {
      share /= 2;
      next = powerAt(record, at.b + share * db, at.k + share * dk);
    }
    at = next;
    if (Math.abs(db) < 1e-11 * at.b && Math.abs(dk) < 1e-11) break;
  }
  const r = record.breakCount;
  const logScale = (at.logSum - Math.log(r)) / at.b;
  return {
    shape: at.b,
    exponent: at.k / at.b,
    scale_kN: Math.exp(record.logReference + logScale),
    logLikelihood: at.height + r * Math.log(r) - r - r * record.logReference,
  };
}

/** Height, gradient and curvature (its sign turned) of the profile at (b, k). */
function powerAt(record: ModeRecord, b: number, k: number) {
  const { logForce, links, breaks, count, breakCount: r } = record;
  let sums = { s0: 0, sy: 0, sl: 0, yy: 0, yl: 0, ll: 0 };
  let ofY = 0;
  let ofL = 0;
  for (let i = 0; i < count; i++) {
    const y = logForce[i] ?? 0;
    const l = Math.log(links[i] ?? 1);
    const w = Math.exp(k * l + b * y);
    sums = {
      s0: sums.s0 + w,
      sy: sums.sy + w * y,
      sl: sums.sl + w * l,
      yy: sums.yy + w * y * y,
      yl: sums.yl + w * y * l,
      ll: sums.ll + w * l * l,
    };
    ofY += (breaks[i] ?? 0) * y;
    ofL += (breaks[i] ?? 0) * l;
  }
  const { s0 } = sums;
  const my = sums.sy / s0;
  const ml = sums.sl / s0;
  return {
    b,
    k,
    logSum: Math.log(s0),
    height: r * Math.log(b) + (b * ofY + k * ofL) - r * Math.log(s0) - ofY,
    gb: r / b + ofY - r * my,
    gk: ofL - r * ml,
    bb: r / b ** 2 + r * (sums.yy / s0 - my * my),
    bk: r * (sums.yl / s0 - my * ml),
    kk: r * (sums.ll / s0 - ml * ml),
  };
}
