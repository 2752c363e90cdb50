import type { ReactNode } from 'react';
import type { Fault } from '../lib/request.ts';
import { text } from '../lib/text.ts';
import { useTitle } from './use-title.ts';

/** In place of a page: what is the matter, and what to do. */
export function Notice({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  useTitle(title);
  return (
    <div className="sheet">
      <div className="notice">
        <h1>{title}</h1>
        {children}
      </div>
    </div>
  );
}

export function Reading() {
  return (
    <div className="sheet">
      <p className="notice soft" role="status">
        {text.loading}
      </p>
    </div>
  );
}

export function AtFault({ fault, again }: { readonly fault: Fault; readonly again: () => void }) {
  return (
    <Notice title={text.fault.title}>
      <p>{fault.detail}</p>
      <p className="soft small">{text.fault.code(fault.code)}</p>
      <p className="notice-press">
        <button type="button" className="press" onClick={again}>
          {text.fault.again}
        </button>
      </p>
    </Notice>
  );
}
