import type { CampaignRows, Row } from '@provinghouse/contract';
import { isInputError, readTrace } from '@provinghouse/core';
import type { RecordingHead } from './ports.ts';
import { practiceNote } from './practice-mark.ts';

/** The next free code of a pull: the greatest number of the pattern in use, and one; `P-001` in an empty campaign. */
export function nextPullCode(pulls: CampaignRows['pulls'], taken: readonly string[] = []): string {
  const codes = [...pulls.map(({ pull }) => pull), ...taken];
  const numbers = codes.map((code) => /^P-(\d{1,9})$/.exec(code)?.[1]).map((digits) => (digits ? Number(digits) : 0));
  return `P-${String(Math.max(0, ...numbers) + 1).padStart(3, '0')}`;
}

/** The place of a recording in its campaign. */
export function tracePath(pull: string): string {
  return `traces/${pull.toLowerCase()}.csv`;
}

/** How the recording reads as a trace. */
export type Readability =
  | { readonly kind: 'readable' }
  | { readonly kind: 'nothing loaded'; readonly words: string }
  | { readonly kind: 'unreadable'; readonly words: string };

export function readabilityOf(bytes: Uint8Array): Readability {
  try {
    readTrace(bytes);
    return { kind: 'readable' };
  } catch (error) {
    if (!isInputError(error)) throw error;
    const isEmpty = ['trace/nothing-loaded', 'trace/empty', 'trace/no-readings', 'trace/one-row'].includes(error.code);
    return { kind: isEmpty ? 'nothing loaded' : 'unreadable', words: error.message };
  }
}

interface Recorded {
  readonly head: RecordingHead;
  /** How its file reads. */
  readonly reads: Readability;
  readonly notes: readonly string[];
}

/** The row of a pull as it enters the record. One that cannot be read is kept and declared invalid. */
export function pullRow({ head, reads, notes }: Recorded): Row<'pulls'> {
  const words = [...(head.isPractice ? [practiceNote] : []), ...notes].join(' ').trim();
  return {
    pull: head.pull,
    piece: head.piece,
    rig: head.rig,
    operator: head.operator,
    pulled_at: `${head.startedAt.slice(0, 19)}Z`,
    trace: tracePath(head.pull),
    time_column: null,
    force_column: null,
    table_column: null,
    extension_column: null,
    panel_maximum_kN: null,
    panel_uncertainty_kN: null,
    valid: reads.kind === 'readable',
    invalid_reason: reads.kind === 'readable' ? null : `the recording cannot be read: ${reads.words}`,
    note: words === '' ? null : words,
  };
}
