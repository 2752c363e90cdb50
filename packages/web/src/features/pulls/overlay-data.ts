import type { CampaignFinding, PullCurve } from '@provinghouse/contract';
import type { TraceReading } from '@provinghouse/core';
import type { OverlaidRule, OverlaidTop, OverlaidTrace, OverlayAxis } from '@provinghouse/figure';
import { placeOf, signalOf } from '../../components/trace/curve-axis.ts';
import { ruleLinesOf } from '../../components/trace/trace-mark.ts';
import type { Recording } from './overlay.tsx';

/** A recording as one trace of a figure; null where it holds no such signal. */
export function overlaid(
  recording: Recording,
  curve: PullCurve,
  { axis, finding }: { readonly axis: OverlayAxis; readonly finding: CampaignFinding | null },
): OverlaidTrace | null {
  const places = signalOf(curve, axis);
  if (places === null) return null;
  const found = finding?.pieces.find(({ piece }) => piece === recording.piece)?.pull;
  const pull = found?.pull === recording.pull ? found : null;
  const maximum = pull?.maximum ?? null;
  return {
    ...recording,
    places,
    forces_kN: curve.force_kN,
    maximum_kN: maximum?.value ?? null,
    expandedUncertainty_kN: maximum?.expandedUncertainty ?? null,
    isAtLeast: maximum?.isAtLeast ?? false,
    top: pull?.reading ? topOf(pull.reading, curve, axis) : null,
  };
}

function topOf(
  { timeAtMaximum_s, maximumForce_kN }: TraceReading,
  curve: PullCurve,
  axis: OverlayAxis,
): OverlaidTop | null {
  const place = timeAtMaximum_s === null ? null : placeOf(curve, axis, timeAtMaximum_s);
  return place === null || maximumForce_kN === null ? null : { place, force_kN: maximumForce_kN };
}

/** The forces that the products asked for are held against; a line that all of them share is named once. */
export function rulesOf(products: readonly string[], finding: CampaignFinding | null): OverlaidRule[] {
  const lines = products.flatMap((code) => {
    const product = finding?.products.find((one) => one.product === code);
    return product ? ruleLinesOf(product).map((line) => ({ ...line, code })) : [];
  });
  return [...Map.groupBy(lines, ({ label }) => label)].flatMap(([label, own]) => {
    const force_kN = own[0]?.force_kN;
    if (force_kN === undefined) return [];
    const codes = own.map(({ code }) => code);
    return [{ force_kN, words: codes.length === products.length ? label : `${codes.join(', ')}: ${label}` }];
  });
}
