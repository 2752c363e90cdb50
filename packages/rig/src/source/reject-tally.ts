import type { WireReport } from '@provinghouse/contract';

/** A piece of bytes that gave no reading. */
export interface Reject {
  readonly bytes: number;
  readonly example: string;
  readonly why: string;
  readonly isGarbled: boolean;
}

type RejectReport = Pick<WireReport, 'rejected' | 'rejectedBytes' | 'garbledShare' | 'reasons'>;

export interface RejectTally {
  add(reject: Reject): void;
  report(): RejectReport;
}

const REASONS_KEPT = 8;

/** The reason without the text it was found in: `force is no number: "NaN"` and `"OL"` are one. */
function reasonOf(why: string): string {
  return why.replace(/: ".*"$/s, '');
}

/** Counts what could not be read by its reasons, each with its newest example; the most frequent first. */
export function rejectTally(): RejectTally {
  const reasons = new Map<string, { count: number; example: string }>();
  const sums = { rejected: 0, rejectedBytes: 0, garbled: 0 };
  return {
    add({ bytes, example, why, isGarbled }) {
      sums.rejected++;
      sums.rejectedBytes += bytes;
      if (isGarbled) sums.garbled++;
      const reason = reasonOf(why);
      const known = reasons.get(reason) ?? { count: 0, example };
      if (known.count === 0 && reasons.size >= REASONS_KEPT) return;
      reasons.set(reason, { count: known.count + 1, example });
    },
    report() {
      const { rejected, rejectedBytes, garbled } = sums;
      return {
        rejected,
        rejectedBytes,
        garbledShare: rejected === 0 ? 0 : garbled / rejected,
        reasons: [...reasons]
          .map(([why, { count, example }]) => ({ why, count, example }))
          .sort((a, b) => b.count - a.count),
      };
    },
  };
}
