import { type ReactNode, useId, useRef, useState } from 'react';
import { OpenedSheet, sheetId } from './opened-sheet.tsx';

interface OpensProps {
  /** What stands on the page and opens. */
  readonly children: ReactNode;
  /** Title of what opens. */
  readonly title: string;
  readonly content: ReactNode;
  readonly wide?: boolean;
}

/**
 * Something on the page that opens to how it came about. Escape or a press elsewhere closes it; focus returns to it. A page has hundreds of
 * these, so what opens is made at the first press.
 */
export function Opens({ children, title, content, wide = false }: OpensProps) {
  const [state, setState] = useState<'never opened' | 'open' | 'closed'>('never opened');
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();
  const isOpen = state === 'open';
  return (
    <>
      <button
        ref={button}
        id={id}
        type="button"
        className="opens"
        aria-haspopup="dialog"
        aria-expanded={isOpen}
        aria-controls={isOpen ? sheetId(id) : undefined}
        onClick={() => setState(isOpen ? 'closed' : 'open')}
      >
        <span>{children}</span>
      </button>
      {state === 'never opened' ? null : (
        <OpenedSheet of={button} id={id} isOpen={isOpen} onClose={() => setState('closed')} wide={wide}>
          <h3>{title}</h3>
          {content}
        </OpenedSheet>
      )}
    </>
  );
}
