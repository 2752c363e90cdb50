import './ledger.css';
import type { Ledger, LedgerLine } from '@provinghouse/contract';
import { useState } from 'react';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { VerdictShape } from '../../components/verdict-mark.tsx';
import { useLedger } from '../../lib/requests/ledger.ts';
import { text } from '../../lib/text.ts';

/** Rows added at a time: a ledger of thousands would make the page slow to lay out. */
const pageLength = 100;

/** What was written into the record of a campaign, and whether the chain of hashes holds. */
export default function LedgerScreen({ code }: { readonly code: string }) {
  return (
    <CampaignFrame code={code}>{(finding) => <LedgerPage code={code} title={finding.campaign.title} />}</CampaignFrame>
  );
}

function LedgerPage({ code, title }: { readonly code: string; readonly title: string }) {
  const ledger = useLedger(code);
  if (ledger.state === 'reading') return <Reading />;
  if (ledger.state === 'at fault') return <AtFault fault={ledger.fault} again={ledger.again} />;
  return (
    <Page title={text.ledger.title} mark={title} lead={text.ledger.lead}>
      <Section label={text.ledger.chain}>
        <Chain ledger={ledger.record} />
      </Section>
      <Section label={text.ledger.entries} note={text.ledger.caption}>
        <Entries entries={ledger.record.entries} />
      </Section>
    </Page>
  );
}

function Chain({ ledger }: { readonly ledger: Ledger }) {
  return (
    <p className={ledger.verified ? 'verdict verdict-conforms' : 'verdict verdict-fails'}>
      <VerdictShape verdict={ledger.verified ? 'conforms' : 'does not conform'} />
      <span>{ledger.verified ? text.ledger.holds(ledger.entries.length) : text.ledger.broken}</span>
    </p>
  );
}

function Entries({ entries }: { readonly entries: readonly LedgerLine[] }) {
  const [length, setLength] = useState(pageLength);
  if (entries.length === 0) return <p className="soft">{text.ledger.empty}</p>;
  const shown = entries.slice(0, length);
  const left = entries.length - shown.length;
  return (
    <>
      <div className="pad-scroll">
        <EntryTable entries={shown} />
      </div>
      {left === 0 ? null : (
        <p className="ledger-more">
          <span className="soft">{text.ledger.shown(shown.length, entries.length)}</span>
          <button type="button" className="press" onClick={() => setLength(length + pageLength)}>
            {text.ledger.more(Math.min(left, pageLength))}
          </button>
        </p>
      )}
    </>
  );
}

function EntryTable({ entries }: { readonly entries: readonly LedgerLine[] }) {
  const { head } = text.ledger;
  return (
    <table className="leaf ledger">
      <thead>
        <tr>
          {[head.seq, head.at, head.who, head.action, head.record, head.why, head.hash].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <tr key={entry.seq}>
            <td>{entry.seq}</td>
            <td className="figure">
              <time dateTime={entry.at}>{clockText(entry.at)}</time>
            </td>
            <td>{entry.who}</td>
            <td>{entry.action}</td>
            <td className="ledger-record">
              {entry.kind} <span className="soft">{entry.record}</span>
            </td>
            <td>{entry.why ?? ''}</td>
            <td>
              <code title={entry.hash}>{entry.hash.slice(0, 8)}</code>
            </td>
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
