import type { Specification } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { citationsOf } from './citation-number.ts';

/** What each source is, numbered as in the table of limits. */
export function SourceList({ specification }: { readonly specification: Specification }) {
  return (
    <ol className="rulebook-sources">
      {citationsOf(specification.limits).map(({ id, kind, text: words }) => (
        <li key={id}>
          <span className={kind === 'memory' ? 'badge badge-doubt' : 'badge'}>{text.rulebook.kind[kind] ?? kind}</span>{' '}
          {words}
        </li>
      ))}
    </ol>
  );
}
