import type { CampaignFinding, PullCurve } from '@provinghouse/contract';
import type { OverlaidRule, OverlaidTrace, OverlayAxis } from '@provinghouse/figure';
import { signalOf } from '../../components/trace/curve-axis.ts';
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
  const pull = finding?.pieces.find(({ piece }) => piece === recording.piece)?.pull;
  const maximum = pull?.pull === recording.pull ? pull.maximum : null;
  return {
    ...recording,
    places,
    forces_kN: curve.force_kN,
    maximum_kN: maximum?.value ?? null,
    expandedUncertainty_kN: maximum?.expandedUncertainty ?? null,
    isAtLeast: maximum?.isAtLeast ?? false,
  };
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
