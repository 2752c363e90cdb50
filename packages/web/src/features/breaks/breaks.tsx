import './breaks.css';
import { Marking } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { joinRows } from '../../lib/entry/join-rows.ts';
import { usePerson } from '../../lib/entry/person.ts';
import { useRows } from '../../lib/entry/use-rows.ts';
import { useStandardsOf } from '../../lib/own-standards.ts';
import { BreakList } from './break-list.tsx';
import { BreakPage } from './break-page.tsx';
import { pulledPieces } from './pulled-pieces.ts';

interface BreaksAddress {
  readonly code: string;
  /** The pull whose break is read; null for the list. */
  readonly pull: string | null;
}

/** Where the pieces parted and how: the list of what was pulled, and the reading of one. */
export default function Breaks({ code, pull }: BreaksAddress) {
  const person = usePerson();
  const held = joinRows({
    campaign: useRows(code, 'campaign'),
    people: useRows(code, 'people'),
    products: useRows(code, 'products'),
    samples: useRows(code, 'samples'),
    pieces: useRows(code, 'pieces'),
    pulls: useRows(code, 'pulls'),
    breaks: useRows(code, 'breaks'),
    own: useStandardsOf(code),
  });
  if (held.state === 'reading') return <Reading />;
  if (held.state === 'at fault') return <AtFault fault={held.fault} again={held.again} />;
  const list = pulledPieces(held.rows, person);
  return (
    <>
      <Marking marking={held.rows.campaign[0]?.body.marking ?? null} />
      {pull === null ? (
        <BreakList code={code} list={list} person={person} />
      ) : (
        <BreakPage key={`${pull} ${person}`} code={code} pull={pull} list={list} person={person} rows={held.rows} />
      )}
    </>
  );
}
