import { type ReactNode, useEffect, useRef } from 'react';
import { text } from '../lib/text.ts';

interface PageProps {
  readonly title: string;
  /** What stands in the margin beside the title. */
  readonly mark?: ReactNode;
  readonly lead?: ReactNode;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}

let pagesShown = 0;

/** One page: its one title, and the sections below. A reader who came from another page is set down at the title. */
export function Page({ title, mark, lead, aside, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} – ${text.name}`;
    pagesShown += 1;
    if (pagesShown > 1) heading.current?.focus();
  }, [title]);
  return (
    <div className="sheet">
      <header className="head">
        <div className="head-mark">{mark}</div>
        <div className="head-body">
          <div className="head-title">
            <h1 ref={heading} tabIndex={-1}>
              {title}
            </h1>
            {aside}
          </div>
          {lead ? <div className="head-lead">{lead}</div> : null}
        </div>
      </header>
      {children}
      <footer className="foot">{text.foot}</footer>
    </div>
  );
}

interface SectionProps {
  readonly label: string;
  readonly note?: string;
  readonly children: ReactNode;
}

/** A section: its label in the margin, its matter beside it. */
export function Section({ label, note, children }: SectionProps) {
  return (
    <section className="section" aria-label={label}>
      <h2>
        {label}
        {note ? <small>{note}</small> : null}
      </h2>
      <div className="section-matter">{children}</div>
    </section>
  );
}
