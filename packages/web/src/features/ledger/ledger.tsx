import './ledger.css';
import { useDebouncedValue } from '@mantine/hooks';
import type { LedgerLine, LedgerPage } from '@provinghouse/contract';
import { useState } from 'react';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { Page, Section } from '../../components/page.tsx';
import { VerdictShape } from '../../components/verdict-mark.tsx';
import { bench } from '../../lib/entry/book.ts';
import { useLedger, useLedgerState } from '../../lib/requests/ledger.ts';
import { text } from '../../lib/text.ts';
import { Changes } from './changes.tsx';

const pageLength = 100;
const typingPause_ms = 200;

/** What was written into the record of a campaign, or of the bench, and whether the chain of hashes holds. */
export default function Ledger({ book }: { readonly book: string }) {
  const words = text.ledger;
  return (
    <Page
      title={words.title}
      mark={book === bench ? words.ofBench : book}
      lead={<p>{book === bench ? words.leadOfBench : words.lead}</p>}
    >
      <Section label={words.chain}>
        <Chain book={book} />
      </Section>
      <Section label={words.entries} note={words.caption}>
        <Entries book={book} />
      </Section>
    </Page>
  );
}

function Chain({ book }: { readonly book: string }) {
  const state = useLedgerState(book);
  if (state.state === 'reading') return <p className="soft">{text.ledger.checking}</p>;
  if (state.state === 'at fault') return <p className="soft">{text.ledger.empty}</p>;
  const { verified, entries, head, disagreements } = state.record;
  return (
    <>
      <p className={verified ? 'verdict verdict-conforms' : 'verdict verdict-fails'}>
        <VerdictShape verdict={verified ? 'conforms' : 'does not conform'} />
        <span>{verified ? text.ledger.holds(entries) : text.ledger.broken}</span>
      </p>
      {disagreements.length === 0 ? null : (
        <ul>
          {disagreements.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      <p className="soft small ledger-head">
        {text.ledger.lastHash} <code>{head}</code>
      </p>
    </>
  );
}

function Entries({ book }: { readonly book: string }) {
  const [typed, setTyped] = useState('');
  const [kinds, setKinds] = useState('');
  const [before, setBefore] = useState<number | null>(null);
  const [search] = useDebouncedValue(typed, typingPause_ms);
  const found = useLedger(book, {
    limit: pageLength,
    ...(search.trim() === '' ? {} : { search }),
    ...(kinds === '' ? {} : { kinds }),
    ...(before === null ? {} : { before }),
  });
  const fresh =
    <A,>(set: (value: A) => void) =>
    (value: A) => {
      set(value);
      setBefore(null);
    };
  const kindChoices = Object.entries(text.ledger.kinds).map(([value, label]) => ({ value, label }));
  return (
    <>
      <search className="ledger-search">
        <TextField label={text.ledger.search} hint={text.ledger.searchHint} value={typed} onChange={fresh(setTyped)} />
        <ChoiceField
          label={text.ledger.kind}
          value={kinds}
          choices={kindChoices}
          empty={text.ledger.anyKind}
          onChange={fresh(setKinds)}
        />
      </search>
      {found.state === 'reading' ? <p className="soft">{text.loading}</p> : null}
      {found.state === 'at fault' ? <p className="form-fault">{found.fault.detail}</p> : null}
      {found.state === 'read' ? <FoundEntries page={found.record} before={before} onBefore={setBefore} /> : null}
    </>
  );
}

interface FoundEntriesProps {
  readonly page: LedgerPage;
  readonly before: number | null;
  readonly onBefore: (before: number | null) => void;
}

function FoundEntries({ page, before, onBefore }: FoundEntriesProps) {
  const { entries, found, next } = page;
  if (found === 0) return <p role="status">{text.ledger.none}</p>;
  return (
    <>
      <p className="soft small" role="status">
        {text.ledger.shown(entries.length, found)}
      </p>
      <div className="pad-scroll">
        <EntryTable entries={entries} />
      </div>
      <p className="ledger-more">
        {next === null ? null : (
          <button type="button" className="press" onClick={() => onBefore(next)}>
            {text.ledger.older}
          </button>
        )}
        {before === null ? null : (
          <button type="button" className="press" onClick={() => onBefore(null)}>
            {text.ledger.newest}
          </button>
        )}
      </p>
    </>
  );
}

function EntryTable({ entries }: { readonly entries: readonly LedgerLine[] }) {
  const { head } = text.ledger;
  return (
    <table className="leaf ledger">
      <ColumnHeads names={[head.seq, head.at, head.who, head.action, head.record, head.changes, head.why]} />
      <tbody>
        {entries.map((entry) => (
          <tr key={entry.seq}>
            <td title={entry.hash}>{entry.seq}</td>
            <td className="figure">
              <time dateTime={entry.at}>{clockText(entry.at)}</time>
            </td>
            <td>{entry.who}</td>
            <td>{entry.action}</td>
            <td className="ledger-record">
              {entry.kind} <span className="soft">{entry.record}</span>
            </td>
            <td className="ledger-record">
              <Changes entry={entry} />
            </td>
            <td>{entry.why}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** An instant as a bench book has it: `2026-03-24 09:15:00 UTC`. Other forms are left as they are. */
function clockText(at: string): string {
  return at.replace(/^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2}:\d{2})(\.\d+)?Z$/, '$1 $2 UTC');
}
