import type { LedgerChange, LedgerLine } from '@provinghouse/contract';
import { Opens } from '../../components/opens.tsx';
import { text } from '../../lib/text.ts';

/** So many changed cells are told in place; more open. */
const toldInPlace = 3;

/** What an entry changed: the old value and the new one, cell by cell. */
export function Changes({ entry }: { readonly entry: LedgerLine }) {
  const { changes } = entry;
  if (changes === null) return <span className="soft">{text.ledger.hidden}</span>;
  if (changes.length === 0) return null;
  const isChange = changes.some(({ before, after }) => before !== null && after !== null);
  if (isChange && changes.length <= toldInPlace) return <ChangeList changes={changes} />;
  return (
    <Opens title={`${entry.kind} ${entry.record}`} content={<ChangeList changes={changes} />}>
      {text.ledger.cells(changes.length)}
    </Opens>
  );
}

function ChangeList({ changes }: { readonly changes: readonly LedgerChange[] }) {
  return (
    <ul className="ledger-changes">
      {changes.map(({ cell, before, after }) => (
        <li key={cell}>
          <span className="soft">{cell}</span>{' '}
          {before === null ? null : (
            <>
              <del>{before}</del>{' '}
            </>
          )}
          {after === null ? <span className="soft">{text.ledger.emptied}</span> : <ins>{after}</ins>}
        </li>
      ))}
    </ul>
  );
}
