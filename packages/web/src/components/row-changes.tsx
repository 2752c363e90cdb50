import type { RowHeld, TableName } from '@provinghouse/contract';
import { useState } from 'react';
import { text } from '../lib/text.ts';
import { Correction, Withdrawal } from './correction.tsx';
import type { AskedColumn } from './row-form.tsx';

interface RowChangesProps<T extends TableName> {
  readonly book: string;
  readonly kind: T;
  readonly held: RowHeld<T>;
  readonly asked: readonly AskedColumn[];
  /** What it is, in words. */
  readonly what: string;
  /** The two keys, named for the ear with the row they are of. */
  readonly names: { readonly correct: string; readonly takeOut: string };
}

/** The cell of a row from which it is corrected or taken out. */
export function RowChanges<T extends TableName>({ book, kind, held, asked, what, names }: RowChangesProps<T>) {
  const [sheet, setSheet] = useState<'correct' | 'take out' | null>(null);
  const words = text.entry.correction;
  const of = { book, kind, what, onDone: () => setSheet(null) };
  return (
    <td className="changes">
      <button
        type="button"
        className="press press-small"
        aria-label={names.correct}
        onClick={() => setSheet('correct')}
      >
        {words.open}
      </button>{' '}
      <button
        type="button"
        className="press press-small"
        aria-label={names.takeOut}
        onClick={() => setSheet('take out')}
      >
        {words.withdraw}
      </button>
      {sheet === 'correct' ? <Correction {...of} held={held} asked={asked} /> : null}
      {sheet === 'take out' ? <Withdrawal {...of} held={held} /> : null}
    </td>
  );
}
