import type { ModeLaw } from './chain-law.ts';
import { type ModeRecord, modeRecord } from './mode-record.ts';
import { brokenModes, isUnread, type PulledPiece } from './piece.ts';
import { type ModePosterior, modePosterior } from './posterior.ts';
import { shapeProfileInterval } from './profile-interval.ts';
import { priorOf, priorSentence, type ShapePrior, type ShapePriors } from './shape-prior.ts';
import { fitWeibull, type Interval, type WeibullFit, waldInterval } from './weibull-fit.ts';

/** Stands for the mode when no break was read, or nothing broke. */
export const anyMode = 'any';

/** All that is known of one break mode. */
export interface BreakModeFinding {
  readonly mode: string;
  /** Breaks in this mode; a fraction when breaks that nobody read were shared out. 0 for a mode that was looked for and not seen. */
  readonly breaks: number;
  readonly likelihood: WeibullFit | null;
  /** Why there is no likelihood fit. */
  readonly reason: string | null;
  readonly shapeWald95: Interval | null;
  readonly shapeProfile95: Interval | null;
  /** What the Bayesian fit holds after the pulls. */
  readonly shapeMedian: number;
  readonly shapeInterval90: Interval;
  /** 1: the breaks taught nothing of the shape; 0: the prior no longer matters. */
  readonly shapeSpreadKept: number;
  /** Law at the median shape and the median scale, for sketches and rough answers. */
  readonly law: ModeLaw;
  readonly prior: ShapePrior;
  readonly priorSentence: string;
}

export interface BreakMode {
  readonly finding: BreakModeFinding;
  readonly record: ModeRecord;
  readonly posterior: ModePosterior;
}

export interface BreakModes {
  readonly seen: readonly BreakMode[];
  /** Looked for, never seen. */
  readonly unseen: readonly BreakMode[];
}

/**
 * Fits every mode that broke, and gives every other mode of `listed` what no break in so many pieces allows. When nothing broke and nothing is
 * listed, one mode stands for any break.
 */
export function breakModes(pieces: readonly PulledPiece[], priors: ShapePriors, listed: readonly string[]): BreakModes {
  const broken = brokenModes(pieces);
  const onlyUnread = broken.length === 0 && pieces.some(isUnread);
  const seenNames = onlyUnread ? [anyMode] : broken;
  const others = listed.filter((mode) => !seenNames.includes(mode));
  const unseenNames = seenNames.length === 0 && others.length === 0 ? [anyMode] : [...new Set(others)];
  const build = (mode: string, place: number) => {
    const record = modeRecord(pieces, mode === anyMode ? null : mode);
    return breakMode(record, { mode, place, prior: priorOf(priors, mode) });
  };
  return {
    seen: seenNames.map(build),
    unseen: unseenNames.map((mode, k) => build(mode, seenNames.length + k)),
  };
}

function breakMode(record: ModeRecord, asked: { mode: string; place: number; prior: ShapePrior }): BreakMode {
  const posterior = modePosterior(record, { ...asked, confidence: 0.9 });
  const { fit, reason } = fitWeibull(record);
  const scale_kN = Math.exp(record.logReference + posterior.logScaleMedian);
  const finding = {
    mode: asked.mode,
    breaks: record.breakCount,
    likelihood: fit,
    reason,
    shapeWald95: fit && waldInterval(fit.shape, fit.shapeStandardError, 0.95),
    shapeProfile95: fit && shapeProfileInterval(record, fit, 0.95),
    shapeMedian: posterior.shapeMedian,
    shapeInterval90: posterior.shapeInterval,
    shapeSpreadKept: posterior.shapeSpreadKept,
    law: { mode: asked.mode, shape: posterior.shapeMedian, scale_kN },
    prior: asked.prior,
    priorSentence: priorSentence(asked.mode, asked.prior),
  };
  return { finding, record, posterior };
}
