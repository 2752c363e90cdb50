import { type ReactNode, useContext } from 'react';
import { FoldsContext } from './folds.ts';

interface FoldProps {
  /** Anchor of the part: what follows the # of its address. */
  readonly id: string;
  readonly label: string;
  readonly note?: string;
  /** What stands beside the label while the part is folded. */
  readonly gist?: ReactNode;
  readonly startsOpen?: boolean;
  readonly children: ReactNode;
}

/** A part of the page that folds, its label in the margin. What is folded is not made until it is opened. */
export function Fold({ id, label, note, gist, startsOpen = true, children }: FoldProps) {
  const folds = useContext(FoldsContext);
  const isOpen = folds.isOpen(id, startsOpen);
  return (
    <details id={id} className="section fold" open={isOpen}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary is pressed by mouse and keyboard alike; the press is kept for the visit */}
      <summary
        onClick={(event) => {
          event.preventDefault();
          folds.set(id, !isOpen);
        }}
      >
        <h2>{label}</h2>
        {isOpen || gist === undefined ? null : <span className="fold-gist">{gist}</span>}
      </summary>
      {isOpen ? (
        <div className="section-matter">
          {note === undefined ? null : <p className="soft small fold-note">{note}</p>}
          {children}
        </div>
      ) : null}
    </details>
  );
}
