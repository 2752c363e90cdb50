import { useComputedColorScheme } from '@mantine/core';
import type { PieceFinding, ProductFinding, PullCurve } from '@provinghouse/contract';
import type { TraceReading } from '@provinghouse/core';
import { type RefObject, useEffect, useRef } from 'react';
import { type Axis, axisUnit, signalOf } from '../../components/trace/curve-axis.ts';
import { marksOf, ruleLinesOf } from '../../components/trace/trace-mark.ts';
import { plotTrace, type TracePlot, type TraceScene } from '../../components/trace/trace-plot.ts';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

interface Places {
  readonly host: RefObject<HTMLDivElement | null>;
  readonly readout: RefObject<HTMLOutputElement | null>;
}

interface Shown {
  readonly piece: PieceFinding;
  readonly product: ProductFinding;
  readonly reading: TraceReading;
  readonly curve: PullCurve;
  readonly axis: Axis;
}

/** Draws the trace, and anew when the axis or the ground changes. The readout is written past React: it follows the pointer. */
export function useTracePlot({ host, readout }: Places, shown: Shown) {
  const plot = useRef<TracePlot | null>(null);
  const ground = useComputedColorScheme('light', { getInitialValueInEffect: false });
  const { piece, product, reading, curve, axis } = shown;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ground is read from the style sheet while drawing
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const scene = sceneOf({ piece, product, reading, curve, axis });
    const made = plotTrace(element, scene, {
      onPoint: (index) => {
        if (readout.current) readout.current.textContent = readoutText(scene, index, axis);
      },
    });
    plot.current = made;
    return () => {
      plot.current = null;
      made.destroy();
    };
  }, [host, readout, piece, product, reading, curve, axis, ground]);
  return plot;
}

function sceneOf({ piece, product, reading, curve, axis }: Shown): TraceScene {
  return {
    xs: signalOf(curve, axis) ?? [],
    forces: curve.force_kN,
    xLabel: text.trace.axisLabels[axis],
    forceLabel: text.trace.force,
    lines: ruleLinesOf(product),
    marks: marksOf(reading, piece.pull?.maximum ?? null, { curve, axis }),
  };
}

function readoutText(scene: TraceScene, index: number | null, axis: Axis): string {
  const force = index === null ? undefined : scene.forces[index];
  const x = index === null ? undefined : scene.xs[index];
  if (force === undefined || x === undefined || x === null) return text.trace.readoutIdle;
  return text.trace.readout(figureText({ value: force, unit: 'kN' }), figureText({ value: x, unit: axisUnit(axis) }));
}
