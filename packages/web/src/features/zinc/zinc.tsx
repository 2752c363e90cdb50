import './zinc.css';
import { Marking } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { bench } from '../../lib/entry/book.ts';
import { joinRows } from '../../lib/entry/join-rows.ts';
import { useRows } from '../../lib/entry/use-rows.ts';
import { useStandardsOf } from '../../lib/own-standards.ts';
import { ZincList } from './zinc-list.tsx';
import { ZincPage } from './zinc-page.tsx';

interface ZincAddress {
  readonly code: string;
  /** The piece whose zinc is read; null for the list. */
  readonly piece: string | null;
}

/** Thickness before the pull and adherence after it: the list of pieces, and the reading of one. */
export default function Zinc({ code, piece }: ZincAddress) {
  const held = joinRows({
    campaign: useRows(code, 'campaign'),
    people: useRows(code, 'people'),
    products: useRows(code, 'products'),
    samples: useRows(code, 'samples'),
    pieces: useRows(code, 'pieces'),
    pulls: useRows(code, 'pulls'),
    zinc: useRows(code, 'zinc'),
    instruments: useRows(code, 'instruments'),
    calibrations: useRows(code, 'calibrations'),
    benchInstruments: useRows(bench, 'instruments'),
    benchCalibrations: useRows(bench, 'calibrations'),
    own: useStandardsOf(code),
  });
  if (held.state === 'reading') return <Reading />;
  if (held.state === 'at fault') return <AtFault fault={held.fault} again={held.again} />;
  const { rows } = held;
  return (
    <>
      <Marking marking={rows.campaign[0]?.body.marking ?? null} />
      {piece === null ? (
        <ZincList code={code} rows={rows} />
      ) : (
        <ZincPage key={piece} code={code} piece={piece} rows={rows} />
      )}
    </>
  );
}
