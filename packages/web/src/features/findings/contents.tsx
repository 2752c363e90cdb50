import { useContext } from 'react';
import { text } from '../../lib/text.ts';
import { FoldsContext, showPart } from './folds.ts';

export interface Part {
  readonly id: string;
  readonly label: string;
}

/** The parts of the page, each a link to it; and all of them folded or unfolded at once. */
export function Contents({ parts }: { readonly parts: readonly Part[] }) {
  const folds = useContext(FoldsContext);
  const words = text.findings.contents;
  return (
    <nav className="section findings-contents" aria-label={words.label} id="contents">
      <p className="findings-contents-label">{words.label}</p>
      <div className="section-matter">
        <ul>
          {parts.map(({ id, label }) => (
            <li key={id}>
              <a href={`#${id}`} onClick={() => showPart(id, folds.set)}>
                {label}
              </a>
            </li>
          ))}
        </ul>
        <p className="form-keys">
          <button type="button" className="press press-small" onClick={() => folds.setAll(true)}>
            {words.unfoldAll}
          </button>
          <button type="button" className="press press-small" onClick={() => folds.setAll(false)}>
            {words.foldAll}
          </button>
        </p>
      </div>
    </nav>
  );
}
