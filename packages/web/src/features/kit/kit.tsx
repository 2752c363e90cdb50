import './kit.css';
import type { KitInCampaign, Row, RowHeld } from '@provinghouse/contract';
import { Link, useLocation } from 'wouter';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { RowForm } from '../../components/row-form.tsx';
import { readAt } from '../../lib/api/address.ts';
import { bench } from '../../lib/entry/book.ts';
import { enter } from '../../lib/entry/enter.ts';
import { joinRows } from '../../lib/entry/join-rows.ts';
import { useRows } from '../../lib/entry/use-rows.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { useRecord } from '../../lib/use-record.ts';
import { newInstrument } from './asked.ts';
import { Standing } from './standing.tsx';

/** The instruments of this bench, the most urgent first. */
export default function Kit() {
  const kit = joinRows({ instruments: useRows(bench, 'instruments'), calibrations: useRows(bench, 'calibrations') });
  const [, go] = useLocation();
  if (kit.state === 'reading') return <Reading />;
  if (kit.state === 'at fault') return <AtFault fault={kit.fault} again={kit.again} />;
  const { instruments } = kit.rows;
  const calibrations = kit.rows.calibrations.map(({ body }) => body);
  return (
    <Page
      title={text.kit.title}
      lead={<p>{text.kit.lead}</p>}
      aside={
        <Link className="press" href={hrefs.benchLedger()}>
          {text.places.benchLedger}
        </Link>
      }
    >
      <Section label={text.kit.list}>
        {instruments.length === 0 ? (
          <>
            <p>{text.kit.empty}</p>
            <p className="soft">{text.kit.emptyCure}</p>
          </>
        ) : (
          <InstrumentTable instruments={instruments} calibrations={calibrations} />
        )}
      </Section>
      <InCampaigns key={instruments.length} />
      <Section label={text.kit.add}>
        <RowForm
          kind="instruments"
          asked={newInstrument}
          start={{}}
          keep={text.kit.keep}
          check={(row) => (instruments.some(({ id }) => id === row.instrument) ? text.kit.taken(row.instrument) : null)}
          onKeep={(row) => {
            const at = { book: bench, label: `${text.kit.title}: ${row.instrument}` };
            void enter(at, { rows: { instruments: [row] } }).then((outcome) => {
              if (outcome.kept) go(hrefs.instrument(row.instrument));
            });
          }}
        />
      </Section>
    </Page>
  );
}

interface InstrumentTableProps {
  readonly instruments: readonly RowHeld<'instruments'>[];
  readonly calibrations: readonly Row<'calibrations'>[];
}

function InstrumentTable({ instruments, calibrations }: InstrumentTableProps) {
  const { head } = text.kit;
  const certificatesOf = (name: string) => calibrations.filter((row) => row.instrument === name);
  const dueOn = (name: string) =>
    certificatesOf(name)
      .map((row) => row.due_on)
      .sort()
      .at(-1) ?? '';
  const sorted = [...instruments].sort((a, b) => (dueOn(a.id) < dueOn(b.id) ? -1 : 1));
  return (
    <div className="pad-scroll">
      <table className="leaf">
        <ColumnHeads names={[head.instrument, head.kind, head.resolution, head.range, head.certificate, head.state]} />
        <tbody>
          {sorted.map(({ id, body }) => (
            <tr key={id}>
              <th scope="row">
                <Link className="row-link" href={hrefs.instrument(id)}>
                  {id}
                </Link>
              </th>
              <td>
                {body.kind} <span className="soft">{body.description}</span>
              </td>
              <td className="figure">
                {body.resolution} <span className="unit">{body.unit}</span>
              </td>
              <td className="figure">
                <Range instrument={body} />
              </td>
              <td>{certificatesOf(id).at(-1)?.calibration ?? text.none}</td>
              <td>
                <Standing certificates={certificatesOf(id)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Range({ instrument }: { readonly instrument: Row<'instruments'> }) {
  const { range_minimum: from, range_maximum: to, unit } = instrument;
  if (from === null && to === null) return <span className="soft">{text.notRecorded}</span>;
  return (
    <>
      {text.kit.range(from === null ? text.none : String(from), to === null ? text.none : String(to))}{' '}
      <span className="unit">{unit}</span>
    </>
  );
}

function InCampaigns() {
  const found = useRecord(readAt('/api/kit/in-campaigns'));
  if (found.state !== 'read' || found.record.instruments.length === 0) return null;
  return (
    <Section label={text.kit.inCampaigns} note={text.kit.inCampaignsNote}>
      <ul className="kit-in-campaigns">
        {found.record.instruments.map((one) => (
          <li key={one.instrument.instrument}>
            <span>
              <strong>{one.instrument.instrument}</strong> {one.instrument.kind}{' '}
              <span className="soft">
                {one.instrument.description} {text.kit.usedIn(one.campaigns)}
              </span>
            </span>
            <Standing certificates={one.calibrations} />
            <button type="button" className="press" onClick={() => void take(one)}>
              {text.kit.take}
              <span className="for-ears"> {one.instrument.instrument}</span>
            </button>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function take({ instrument, calibrations }: KitInCampaign) {
  const at = { book: bench, label: `${text.kit.take}: ${instrument.instrument}` };
  return enter(at, { rows: { instruments: [instrument], calibrations } });
}
