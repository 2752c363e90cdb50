import 'uplot/dist/uPlot.min.css';
import { useComputedColorScheme } from '@mantine/core';
import type { PullAtRig } from '@provinghouse/contract';
import { useEffect, useRef } from 'react';
import { text } from '../../lib/text.ts';
import { type LivePlot, plotLive } from './live-plot.ts';
import type { LiveState } from './live-state.ts';

interface LiveCurveProps {
  readonly state: LiveState;
  readonly facts: PullAtRig | null;
}

/** The curve of the pull as it grows. A picture only: every number in it stands beside it. */
export function LiveCurve({ state, facts }: LiveCurveProps) {
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<LivePlot | null>(null);
  const ground = useComputedColorScheme('light', { getInitialValueInEffect: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ground is read from the style sheet while drawing
  useEffect(() => {
    if (host.current === null) return;
    plot.current = plotLive(host.current);
    return () => {
      plot.current?.destroy();
      plot.current = null;
    };
  }, [ground]);
  useEffect(() => {
    plot.current?.show({
      times_s: state.times_s,
      forces_kN: state.forces_kN,
      ruleLines: facts?.ruleLines ?? [],
      forecast: state.view?.forecast ?? null,
      marks: state.marks,
      gaps: state.gaps,
    });
  });
  return (
    <figure className="live-curve">
      <div
        className="live-host"
        ref={host}
        role="img"
        aria-label={`${text.rig.curve.label}. ${text.rig.curve.words}`}
      />
    </figure>
  );
}
