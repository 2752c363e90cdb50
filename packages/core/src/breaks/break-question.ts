/** A break as it is about to be written down; null where nothing was chosen yet. */
export interface BreakDraft {
  /** From the fixed end; 0 for a gripped link. */
  readonly link: number | null;
  readonly position: string | null;
  readonly mode: string | null;
}

/** What does not fit together in a reading of a break, as questions in words; empty where all fits or too little is said. */
export function breakQuestions({ link, position, mode }: BreakDraft): readonly string[] {
  const questions: string[] = [];
  if (position === 'in grip' && link !== null && link > 0)
    questions.push(
      `Link ${link} hangs free between the grips, so it cannot part in one. Was it the gripped link, or another place on link ${link}?`,
    );
  if (mode === 'weld not fused' && position !== null && position !== 'weld' && position !== 'beside weld')
    questions.push(`A weld that is not fused parts at the weld, but the place says “${position}”.`);
  return questions;
}
