import type { Row } from '@provinghouse/contract';

/** How the note of a practice pull begins. The same word stands in the first line of its recording. */
export const practiceNote = 'PRACTICE: simulated by the practice rig, no chain was pulled.';

const inFirstLines = /^#[^\n]*\bpractice\b/im;

/** How many bytes of a recording are looked at for its mark: the preamble stands at its beginning. */
const preambleBytes = 4096;

/**
 * True where a pull was simulated: its note begins with the mark, or the preamble of its recording carries it, which no correction of the
 * note can take away.
 */
export function isPracticePull(row: Row<'pulls'>, recording: Uint8Array | undefined): boolean {
  if (row.note?.startsWith('PRACTICE') === true) return true;
  if (!recording) return false;
  return inFirstLines.test(new TextDecoder().decode(recording.subarray(0, preambleBytes)));
}

/** True where a campaign says of itself, in its marking, that it is practice, invented or simulated. Only such a campaign may hold practice pulls in a report. */
export function isMarkedUnreal(campaign: Pick<Row<'campaign'>, 'marking'>): boolean {
  return /\b(practice|invented|simulated)\b/i.test(campaign.marking ?? '');
}
