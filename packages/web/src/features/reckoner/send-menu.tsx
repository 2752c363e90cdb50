import { inputsThatTake, type TakingInput } from '@provinghouse/core';
import { useMemo, useRef, useState } from 'react';
import { text } from '../../lib/text.ts';
import { printed } from './result-text.ts';

interface SendMenuProps {
  readonly what: string;
  /** The result: its calculation, its key and unit. */
  readonly calculation: string;
  readonly result: string;
  readonly unit: string;
  readonly onSend: (to: { readonly calculation: string; readonly key: string }) => void;
}

const words = text.reckoner;

/** Opens to the fields that a result may be sent into; the list is only made once it is open. */
export function SendMenu({ what, calculation, result, unit, onSend }: SendMenuProps) {
  const menu = useRef<HTMLDetailsElement>(null);
  const [isOpen, setOpen] = useState(false);
  const taking = useMemo(() => inputsThatTake({ calculation, key: result, unit }), [calculation, result, unit]);
  const close = () => {
    if (menu.current !== null) menu.current.open = false;
  };
  const send = (to: TakingInput) => {
    close();
    onSend({ calculation: to.calculation.name, key: to.input.key });
  };
  if (taking.length === 0) return <span className="soft">{words.sendNone}</span>;
  return (
    <details
      className="send-on"
      ref={menu}
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        close();
        menu.current?.querySelector('summary')?.focus();
      }}
    >
      <summary aria-label={words.sendLabel(what)}>{words.send}</summary>
      {isOpen ? (
        <div className="send-on-list">
          <SendGroup title={words.sendSame} taking={taking.filter(({ isSame }) => isSame)} onSend={send} />
          <SendGroup title={words.sendUnit} taking={taking.filter(({ isSame }) => !isSame)} onSend={send} />
        </div>
      ) : null}
    </details>
  );
}

interface SendGroupProps {
  readonly title: string;
  readonly taking: readonly TakingInput[];
  readonly onSend: (to: TakingInput) => void;
}

function SendGroup({ title, taking, onSend }: SendGroupProps) {
  if (taking.length === 0) return null;
  return (
    <section aria-label={title}>
      <p className="soft small">{title}</p>
      <ul>
        {taking.map((to) => (
          <li key={`${to.calculation.name} ${to.input.key}`}>
            <button type="button" onClick={() => onSend(to)}>
              {to.calculation.title}: <strong>{printed(to.input.meaning)}</strong>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
