import { createHash } from 'node:crypto';
import type { RecordingHead, TimedMark } from './ports.ts';
import { practiceNote } from './practice-mark.ts';

interface Preamble {
  readonly head: RecordingHead;
  readonly marks: readonly TimedMark[];
  readonly notes: readonly string[];
  /** Of the readings below, as they were sealed at the rig. */
  readonly readingsSha256: string;
}

/** Puts what a recording is of above its readings, in lines that begin with `#`. A practice recording says so in the first. */
export function withPreamble(
  readings: Uint8Array,
  { head, marks, notes, readingsSha256 }: Preamble,
): { readonly bytes: Uint8Array; readonly sha256: string } {
  const lines = [
    ...(head.isPractice ? [practiceNote] : []),
    `pull ${head.pull} of piece ${head.piece} on ${head.rig}`,
    `campaign ${head.campaign}`,
    `started ${head.startedAt}`,
    `from ${head.source}`,
    ...(head.operator === null ? [] : [`pulled by ${head.operator}`]),
    `SHA-256 of the readings ${readingsSha256}`,
    ...marks.map(({ time_s, words }) => `mark at ${time_s.toFixed(2)} s: ${words}`),
    ...notes,
  ];
  const text = lines.map((line) => `# ${line.replaceAll(/[\r\n]+/g, ' ')}\n`).join('');
  const bytes = Buffer.concat([Buffer.from(text), readings]);
  return { bytes, sha256: createHash('sha256').update(bytes).digest('hex') };
}
