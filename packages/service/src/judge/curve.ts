import type { PieceFinding, PullCurve, Row } from '@provinghouse/contract';
import { parseTrace, thinSignals } from '@provinghouse/core';
import type { Evidence } from './evidence.ts';
import { parseOptions } from './parse-options.ts';

/** Enough for a wide screen at two samples a pixel column; extremes are kept whatever the number. */
const pointsDrawn = 2000;

/** The curve of a pull for drawing; null for a pull that was keyed from the panel. */
export function curveOf(pull: Row<'pulls'>, evidence: Evidence, points = pointsDrawn): PullCurve | null {
  const file = pull.trace === null ? undefined : evidence.traces.get(pull.trace);
  if (!file) return null;
  return { pull: pull.pull, ...thinSignals(parseTrace(file.bytes, parseOptions(pull)), points) };
}

/** The curves of every judged pull, by its code. */
export function curvesOf(
  pieces: readonly PieceFinding[],
  evidence: Evidence,
  points: number,
): Record<string, PullCurve> {
  const judged = new Set(pieces.map((piece) => piece.pull?.pull));
  const curves = evidence.rows.pulls.flatMap((pull) =>
    judged.has(pull.pull) ? [curveOf(pull, evidence, points)] : [],
  );
  return Object.fromEntries(curves.flatMap((curve) => (curve ? [[curve.pull, curve]] : [])));
}
