import type { TakingInput } from '@provinghouse/core';
import { useRef } from 'react';
import { text } from '../../lib/text.ts';

interface SendMenuProps {
  readonly what: string;
  readonly taking: readonly TakingInput[];
  readonly onSend: (to: { readonly calculation: string; readonly key: string }) => void;
}

const words = text.reckoner;

/** Opens to the fields that a result may be sent into. */
export function SendMenu({ what, taking, onSend }: SendMenuProps) {
  const menu = useRef<HTMLDetailsElement>(null);
  const close = () => {
    if (menu.current !== null) menu.current.open = false;
  };
  const send = (to: TakingInput) => {
    close();
    onSend({ calculation: to.calculation.name, key: to.input.key });
  };
  if (taking.length === 0) return <span className="soft">{words.sendNone}</span>;
  const same = taking.filter(({ isSame }) => isSame);
  const other = taking.filter(({ isSame }) => !isSame);
  return (
    <details
      className="send-on"
      ref={menu}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        close();
        menu.current?.querySelector('summary')?.focus();
      }}
    >
      <summary aria-label={words.sendLabel(what)}>{words.send}</summary>
      <div className="send-on-list">
        <SendGroup title={words.sendSame} taking={same} onSend={send} />
        <SendGroup title={words.sendUnit} taking={other} onSend={send} />
      </div>
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
              {to.calculation.title}: <strong>{to.input.meaning}</strong>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
