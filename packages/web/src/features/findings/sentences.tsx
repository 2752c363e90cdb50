import { asSentence } from './as-sentence.ts';

/** Sentences of the record, one a line. */
export function Sentences({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <ul className="sentences">
      {sentences.map((sentence) => (
        <li key={sentence}>{asSentence(sentence)}</li>
      ))}
    </ul>
  );
}
