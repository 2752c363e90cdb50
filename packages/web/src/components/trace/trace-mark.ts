import type { ProductFinding, PullCurve } from '@provinghouse/contract';
import type { MeasuredValue, Quantity, TraceReading } from '@provinghouse/core';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { type Axis, placeOf } from './curve-axis.ts';

/** A horizontal line a force is held against. */
export interface RuleLine {
  readonly force_kN: number;
  readonly label: string;
}

/** A mark at one place of the curve. */
export interface TraceMark {
  readonly kind: 'maximum' | 'parted' | 'event' | 'spike';
  readonly x: number;
  readonly force_kN: number;
  readonly label: string;
}

/** Rule lines of a product: the forces its specification asks for. */
export function ruleLinesOf(product: ProductFinding): RuleLine[] {
  return [
    ...ruleLine(product, 'proofForce', text.trace.proof),
    ...ruleLine(product, 'breakingForce', text.trace.minimum),
  ];
}

function ruleLine(product: ProductFinding, quantity: Quantity, label: (value: string) => string): RuleLine[] {
  const limit = product.specification.limits.find((one) => one.quantity === quantity);
  const force_kN = limit?.lower ?? null;
  return force_kN === null ? [] : [{ force_kN, label: label(`${force_kN}\u00a0kN`) }];
}

/** Marks of a reading on one axis. Without a time signal only those can be placed whose extension the reading states. */
export function marksOf(
  reading: TraceReading,
  maximum: MeasuredValue | null,
  at: { readonly curve: PullCurve; readonly axis: Axis },
): TraceMark[] {
  const place = (time_s: number | null) => (time_s === null ? null : placeOf(at.curve, at.axis, time_s));
  const mark = (kind: TraceMark['kind'], label: string, x: number | null, force_kN: number | null): TraceMark[] =>
    x === null || force_kN === null ? [] : [{ kind, x, force_kN, label }];
  const maximumLabel = maximum
    ? figureText({ ...maximum, uncertainty: maximum.expandedUncertainty })
    : figureText({ value: reading.maximumForce_kN ?? 0, unit: 'kN', isAtLeast: reading.maximumIsAtLeast });
  const parting = figureText({ value: reading.partingForce_kN ?? 0, unit: 'kN' });
  return [
    ...mark('maximum', text.trace.maximum(maximumLabel), place(reading.timeAtMaximum_s), reading.maximumForce_kN),
    ...mark('parted', text.trace.parted(parting), place(reading.timeAtParting_s), reading.partingForce_kN),
    ...listedEvents(reading).flatMap((event, index) =>
      mark('event', String(index + 1), place(event.time_s), event.force_kN),
    ),
    ...reading.spikes.flatMap((spike) => mark('spike', '', place(spike.time_s), spike.force_kN)),
  ];
}

/** Events that are listed below the figure; parting has its own mark. */
export function listedEvents(reading: TraceReading): TraceReading['events'] {
  return reading.events.filter((event) => event.kind !== 'parted');
}
