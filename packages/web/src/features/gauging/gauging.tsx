import './gauging.css';
import { useMemo } from 'react';
import { Marking } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { bench } from '../../lib/entry/book.ts';
import { joinRows } from '../../lib/entry/join-rows.ts';
import { useOutbox } from '../../lib/entry/outbox.ts';
import { usePerson } from '../../lib/entry/person.ts';
import { useRows } from '../../lib/entry/use-rows.ts';
import { useStandardsOf } from '../../lib/own-standards.ts';
import { useRemembered } from '../../lib/use-remembered.ts';
import { type DeskRows, piecesAtDesk } from './gauging-desk.ts';
import { useGaugingLog } from './gauging-log.ts';
import { parsePlan } from './gauging-plan.ts';
import { mergedReadings } from './merged-readings.ts';
import { PieceList } from './piece-list.tsx';
import { ReadingPage } from './reading-page.tsx';
import { useSkipped } from './skipped-places.ts';
import { useLengthKit } from './use-length-kit.ts';

interface GaugingAddress {
  readonly code: string;
  /** The piece that is gauged; null for the list. */
  readonly piece: string | null;
}

/** Gauging: which piece is next, and the reading of one. */
export default function Gauging({ code, piece }: GaugingAddress) {
  const gauging = useRows(code, 'gauging');
  const held = joinRows({
    gauging,
    campaign: useRows(code, 'campaign'),
    people: useRows(code, 'people'),
    products: useRows(code, 'products'),
    samples: useRows(code, 'samples'),
    pieces: useRows(code, 'pieces'),
    zinc: useRows(code, 'zinc'),
    instruments: useRows(code, 'instruments'),
    calibrations: useRows(code, 'calibrations'),
    benchInstruments: useRows(bench, 'instruments'),
    benchCalibrations: useRows(bench, 'calibrations'),
    own: useStandardsOf(code),
  });
  if (held.state === 'reading' || gauging.state === 'reading') return <Reading />;
  if (held.state === 'at fault') return <AtFault fault={held.fault} again={held.again} />;
  if (gauging.state === 'at fault') return <AtFault fault={gauging.fault} again={gauging.again} />;
  return <GaugingDesk code={code} piece={piece} rows={held.rows} gauging={gauging} />;
}

interface DeskProps extends GaugingAddress {
  readonly rows: DeskRows;
  readonly gauging: Extract<ReturnType<typeof useRows<'gauging'>>, { state: 'read' }>;
}

function GaugingDesk({ code, piece, rows, gauging }: DeskProps) {
  const all = useGaugingLog();
  const outbox = useOutbox();
  const person = usePerson();
  const skipped = useSkipped(code);
  const [keptPlan, keepPlan] = useRemembered(`gauging plan ${code}`, '');
  const plan = useMemo(() => parsePlan(keptPlan), [keptPlan]);
  const log = useMemo(() => all.filter(({ book }) => book === code), [all, code]);
  const { rows: held, asOf } = gauging;
  const readings = useMemo(() => {
    const waiting = outbox.waiting.filter(({ book }) => book === code);
    return mergedReadings({ held, asOf, entries: log, waiting });
  }, [held, asOf, log, outbox.waiting, code]);
  const { products, samples, pieces: cut, zinc, own } = rows;
  const pieces = useMemo(
    () => piecesAtDesk({ rows: { products, samples, pieces: cut, zinc, own }, readings, plan, skipped }),
    [products, samples, cut, zinc, readings, plan, own, skipped],
  );
  const kit = useLengthKit(rows, log);
  const campaign = rows.campaign[0]?.body;
  const desk = { code, rows, pieces, readings, log, kit, person };
  const at = pieces.find((one) => one.piece === piece) ?? null;
  return (
    <>
      <Marking marking={campaign?.marking ?? null} />
      {at === null ? (
        <PieceList desk={desk} plan={plan} onPlan={(next) => keepPlan(JSON.stringify(next))} unknown={piece} />
      ) : (
        <ReadingPage key={at.piece} desk={desk} at={at} />
      )}
    </>
  );
}
