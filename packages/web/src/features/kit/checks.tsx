import type { Row } from '@provinghouse/contract';
import { allowedDeviation, certificateStanding, controlChart } from '@provinghouse/core';
import { controlChartFigure, controlChartTable, type FigureSetting } from '@provinghouse/figure';
import { useMemo } from 'react';
import { RowForm } from '../../components/row-form.tsx';
import { StatisticFigure } from '../../components/statistic-figure.tsx';
import { bench } from '../../lib/entry/book.ts';
import { enter } from '../../lib/entry/enter.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { personHere } from '../../lib/entry/person.ts';
import { text } from '../../lib/text.ts';
import { newCheck } from './asked.ts';

interface ChecksProps {
  readonly instrument: Row<'instruments'>;
  readonly certificates: readonly Row<'calibrations'>[];
  readonly checks: readonly Row<'checks'>[];
  readonly people: readonly Row<'people'>[];
}

/** Readings of an instrument against something known, charted, and the next one. */
export default function Checks({ instrument, certificates, checks, people }: ChecksProps) {
  const figure = useMemo(() => figureOf(instrument, certificates, checks), [instrument, certificates, checks]);
  const draw = useMemo(() => (setting: FigureSetting) => controlChartFigure(figure, setting), [figure]);
  const { chart } = figure;
  const references = [...new Set(checks.flatMap(({ reference }) => (reference === null ? [] : [reference])))];
  const newest = checks.at(-1);
  return (
    <>
      {checks.length === 0 ? (
        <p>{text.kit.noChecks}</p>
      ) : (
        <>
          <StatisticFigure
            title={text.kit.chart(instrument.instrument)}
            how={text.kit.chartHow}
            file={`${instrument.instrument}-checks`}
            draw={draw}
            table={controlChartTable(figure)}
          />
          <Signals figure={figure} />
          {chart.settingReadings < 20 ? (
            <p className="soft small">{text.kit.provisional(chart.settingReadings)}</p>
          ) : null}
        </>
      )}
      <RowForm
        key={checks.length}
        kind="checks"
        asked={newCheck(instrument.unit, references)}
        // The same thing is read again most of the time.
        start={{
          instrument: instrument.instrument,
          checked_at: new Date().toISOString(),
          reference: newest?.reference ?? null,
          ...(newest ? { reference_value: newest.reference_value } : {}),
        }}
        keep={text.kit.addCheck}
        onKeep={(row) => {
          const by = personHere();
          const rows = {
            people: peopleRows(people, by),
            checks: [{ ...row, checked_at: new Date().toISOString(), by }],
          };
          void enter({ book: bench, label: `${text.kit.checks}: ${instrument.instrument}` }, { rows });
        }}
      />
    </>
  );
}

function figureOf(
  instrument: Row<'instruments'>,
  certificates: readonly Row<'calibrations'>[],
  checks: readonly Row<'checks'>[],
) {
  const allowed = checks.map(({ checked_at, reference_value }) => {
    const { certificate } = certificateStanding(certificates, checked_at.slice(0, 10));
    const { resolution, class: rigClass } = instrument;
    const expandedUncertainty = certificate?.expanded_uncertainty ?? null;
    return allowedDeviation({ resolution, class: rigClass, expandedUncertainty }, reference_value);
  });
  const readings = checks.map(({ checked_at, reading, reference_value }) => ({
    at: checked_at,
    deviation: reading - reference_value,
  }));
  const chart = controlChart(
    readings,
    allowed.map((one) => one?.allowed ?? null),
  );
  return { instrument: instrument.instrument, unit: instrument.unit, chart, origin: allowed.at(-1)?.origin ?? null };
}

function Signals({ figure }: { readonly figure: ReturnType<typeof figureOf> }) {
  const told = figure.chart.points.filter(({ signals }) => signals.length > 0);
  return (
    <ul className="kit-signals">
      {told.length === 0 ? <li>{text.kit.inOrder}</li> : null}
      {told.map(({ at, signals }) => (
        <li key={at}>
          {text.kit.told(at.slice(0, 16).replace('T', ' '), signals.map((one) => text.kit.signals[one]).join(', '))}
        </li>
      ))}
      {figure.origin === null ? null : <li className="soft small">{text.kit.allowedBy(figure.origin)}</li>}
    </ul>
  );
}
