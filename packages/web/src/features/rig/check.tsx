/** Whether a line of the checklist holds: by a shape and a word, never by colour alone. */
export function Check({ holds, words }: { readonly holds: boolean; readonly words: string }) {
  return (
    <span className={holds ? 'check check-holds' : 'check check-open'}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {holds ? <path d="M2 8.5l4 4 8-9" /> : <circle cx="8" cy="8" r="5.5" />}
      </svg>
      {words}
    </span>
  );
}
