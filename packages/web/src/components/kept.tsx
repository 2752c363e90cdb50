import { useState } from 'react';
import { discard, type Outbox, sendAll, useOutbox } from '../lib/entry/outbox.ts';
import { text } from '../lib/text.ts';
import { SheetOver } from './sheet-over.tsx';

/** Says of everything entered in this browser whether the ledger has it. “Kept” is said for nothing else. */
export function KeptMark() {
  const outbox = useOutbox();
  const [isOpen, setOpen] = useState(false);
  const refused = outbox.waiting.filter((one) => one.refused !== null);
  const waiting = outbox.waiting.length - refused.length;
  return (
    <div className={`kept ${kindOf(outbox, waiting, refused.length)}`}>
      <span role="status" aria-label={text.entry.kept.label}>
        <KeptWords outbox={outbox} waiting={waiting} />
      </span>
      {outbox.isCutOff ? (
        <button type="button" className="press press-small" onClick={() => void sendAll()}>
          {text.entry.kept.now}
        </button>
      ) : null}
      {refused.length === 0 ? null : (
        <button type="button" className="press press-small" onClick={() => setOpen(true)}>
          {text.entry.kept.refused(refused.length)}
        </button>
      )}
      {isOpen && refused.length > 0 ? <Refused outbox={outbox} onClose={() => setOpen(false)} /> : null}
    </div>
  );
}

function kindOf({ isCutOff, kept }: Outbox, waiting: number, refused: number): string {
  if (isCutOff && waiting > 0) return 'kept-cut-off';
  if (refused > 0) return 'kept-refused';
  if (waiting > 0) return 'kept-waiting';
  return kept === null ? 'kept-idle' : 'kept-done';
}

function KeptWords({ outbox, waiting }: { readonly outbox: Outbox; readonly waiting: number }) {
  const words = text.entry.kept;
  if (waiting > 0) return outbox.isCutOff ? words.cutOff(waiting) : words.sending(waiting);
  if (outbox.kept === null) return null;
  return (
    <>
      <svg viewBox="0 0 10 10" aria-hidden="true">
        <path d="M1 5.5 4 8.5 9 1.5" fill="none" stroke="currentColor" strokeWidth="1.8" />
      </svg>
      {words.kept(outbox.kept.ledgerSeq)}
    </>
  );
}

function Refused({ outbox, onClose }: { readonly outbox: Outbox; readonly onClose: () => void }) {
  const words = text.entry.kept;
  return (
    <SheetOver title={words.refusedTitle} onClose={onClose}>
      <p>{words.refusedWords}</p>
      <ul className="refused">
        {outbox.waiting.flatMap(({ id, label, refused }) =>
          refused === null
            ? []
            : [
                <li key={id}>
                  <p>
                    <strong>{label}</strong> <span className="line">{refused.detail}</span>
                  </p>
                  <button type="button" className="press" onClick={() => discard(id)}>
                    {words.letGo}
                  </button>
                </li>,
              ],
        )}
      </ul>
    </SheetOver>
  );
}
