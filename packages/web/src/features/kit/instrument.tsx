import './kit.css';
import type { Row, RowHeld } from '@provinghouse/contract';
import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { Correction } from '../../components/correction.tsx';
import { AtFault, Notice, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { RowForm } from '../../components/row-form.tsx';
import { bench } from '../../lib/entry/book.ts';
import { enter } from '../../lib/entry/enter.ts';
import { joinRows } from '../../lib/entry/join-rows.ts';
import { useRows } from '../../lib/entry/use-rows.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { certificateFacts, instrumentFacts, newCertificate } from './asked.ts';
import { Hanging } from './hanging.tsx';
import { Standing } from './standing.tsx';

const Checks = lazy(() => import('./checks.tsx'));

/** One instrument: what it is, its certificates, its check readings, and what hangs on it. */
export default function Instrument({ instrument }: { readonly instrument: string }) {
  const kit = joinRows({
    instruments: useRows(bench, 'instruments'),
    calibrations: useRows(bench, 'calibrations'),
    checks: useRows(bench, 'checks'),
    people: useRows(bench, 'people'),
  });
  if (kit.state === 'reading') return <Reading />;
  if (kit.state === 'at fault') return <AtFault fault={kit.fault} again={kit.again} />;
  const held = kit.rows.instruments.find(({ id }) => id === instrument);
  if (!held)
    return (
      <Notice title={text.kit.unknown(instrument)}>
        <p>{text.kit.unknownCure}</p>
        <p>
          <Link href={hrefs.kit()}>{text.kit.toKit}</Link>
        </p>
      </Notice>
    );
  const certificates = kit.rows.calibrations.filter(({ body }) => body.instrument === instrument);
  const checks = kit.rows.checks.filter(({ body }) => body.instrument === instrument).map(({ body }) => body);
  return (
    <Page
      title={instrument}
      mark={<Standing certificates={certificates.map(({ body }) => body)} />}
      lead={
        <p>
          {held.body.kind} <span className="soft">{held.body.description}</span>
        </p>
      }
    >
      <Section label={text.kit.facts}>
        <Facts held={held} />
      </Section>
      <Section label={text.kit.certificates}>
        <Certificates instrument={held.body} certificates={certificates} />
      </Section>
      <Section label={text.kit.checks} note={text.kit.checksNote}>
        <Suspense fallback={<p className="soft">{text.loading}</p>}>
          <Checks
            instrument={held.body}
            certificates={certificates.map(({ body }) => body)}
            checks={checks}
            people={kit.rows.people.map(({ body }) => body)}
          />
        </Suspense>
      </Section>
      <Section label={text.kit.hanging} note={text.kit.hangingNote}>
        <Hanging instrument={instrument} />
      </Section>
    </Page>
  );
}

function Facts({ held }: { readonly held: RowHeld<'instruments'> }) {
  const [isOpen, setOpen] = useState(false);
  const cells: Readonly<Record<string, string | number | boolean | null>> = held.body;
  const asked = instrumentFacts(held.body.unit);
  return (
    <>
      <dl className="facts">
        {asked.map(({ column, label, unit }) => (
          <div key={column} className="fact">
            <dt>{label}</dt>
            <dd className="figure">
              {cells[column] === null ? (
                <span className="soft">{text.notRecorded}</span>
              ) : (
                <>
                  {String(cells[column])} {unit === undefined ? null : <span className="unit">{unit}</span>}
                </>
              )}
            </dd>
          </div>
        ))}
      </dl>
      <p className="form-keys">
        <button type="button" className="press" onClick={() => setOpen(true)}>
          {text.entry.correction.open}
        </button>
      </p>
      {isOpen ? (
        <Correction
          book={bench}
          kind="instruments"
          held={held}
          asked={asked}
          what={held.id}
          onDone={() => setOpen(false)}
        />
      ) : null}
    </>
  );
}

interface CertificatesProps {
  readonly instrument: Row<'instruments'>;
  readonly certificates: readonly RowHeld<'calibrations'>[];
}

function Certificates({ instrument, certificates }: CertificatesProps) {
  const [corrected, setCorrected] = useState<RowHeld<'calibrations'> | null>(null);
  const { certificateHead: head } = text.kit;
  return (
    <>
      {certificates.length === 0 ? (
        <p>{text.kit.noCertificate}</p>
      ) : (
        <table className="leaf">
          <ColumnHeads names={[head.number, head.from, head.due, head.uncertainty, text.entry.form.change]} />
          <tbody>
            {certificates.map((held) => (
              <tr key={held.id}>
                <th scope="row">{held.id}</th>
                <td className="figure">{held.body.calibrated_on}</td>
                <td className="figure">{held.body.due_on}</td>
                <td className="figure">{expandedText(held.body, instrument.unit)}</td>
                <td>
                  <button type="button" className="press" onClick={() => setCorrected(held)}>
                    {text.entry.correction.open}
                    <span className="for-ears"> {held.id}</span>
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <h3 className="form-title">{text.kit.addCertificate}</h3>
      <RowForm
        key={certificates.length}
        kind="calibrations"
        asked={newCertificate(instrument.unit)}
        start={{ instrument: instrument.instrument }}
        keep={text.kit.keepCertificate}
        onKeep={(row) =>
          void enter(
            { book: bench, label: `${text.kit.certificates}: ${row.calibration}` },
            { rows: { calibrations: [row] } },
          )
        }
      />
      {corrected === null ? null : (
        <Correction
          book={bench}
          kind="calibrations"
          held={corrected}
          asked={certificateFacts(instrument.unit)}
          what={corrected.id}
          onDone={() => setCorrected(null)}
        />
      )}
    </>
  );
}

function expandedText({ expanded_uncertainty, coverage_factor }: Row<'calibrations'>, unit: string): string {
  if (expanded_uncertainty === null || coverage_factor === null) return text.none;
  return text.kit.expanded(String(expanded_uncertainty), unit, String(coverage_factor));
}
