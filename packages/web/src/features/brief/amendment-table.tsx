import type { LedgerLine } from '@provinghouse/contract';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { useLedger } from '../../lib/requests/ledger.ts';
import { text } from '../../lib/text.ts';
import { timeText } from './freeze-part.tsx';

const words = text.brief.desk.amendments;

/** Every change of question, claims, rule and plan since the freeze, with its reason, out of the ledger. */
export function AmendmentTable({ code }: { readonly code: string }) {
  const ledger = useLedger(code, { limit: 500, kinds: 'campaign,products' });
  if (ledger.state === 'reading') return <p className="soft">{text.loading}</p>;
  if (ledger.state === 'at fault') return <p className="form-fault">{ledger.fault.detail}</p>;
  const found = amendmentsOf(ledger.record.entries);
  if (found.length === 0) return <p className="soft">{words.none}</p>;
  return (
    <table className="leaf amendments">
      <caption className="for-ears">{words.caption}</caption>
      <ColumnHeads names={[words.head.at, words.head.who, words.head.what, words.head.why]} />
      <tbody>
        {found.map(({ seq, at, who, kind, record, action, why }) => (
          <tr key={seq}>
            <th scope="row" className="figure">
              {timeText(at).replace(' UTC', '')}
            </th>
            <td>{who}</td>
            <td>
              {kind === 'campaign' ? words.campaign : words.product(record)} {words.action[action] ?? action}
            </td>
            <td>{why}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function amendmentsOf(entries: readonly LedgerLine[]): readonly LedgerLine[] {
  const frozen = entries.find(({ action }) => action === 'freeze the plan')?.seq;
  return entries.filter(({ seq, kind, action }) => {
    if (frozen === undefined || seq <= frozen || !['campaign', 'products'].includes(kind)) return false;
    return Object.hasOwn(words.action, action);
  });
}
