import type { Row } from '@provinghouse/contract';
import { useState } from 'react';
import { isInForce, lastDue } from '../../lib/entry/certificate-day.ts';
import { type Kit, kitRows } from '../../lib/entry/kit-rows.ts';
import { useRemembered } from '../../lib/use-remembered.ts';
import type { ZincRows } from './zinc-rows.ts';

/** The coating gauge in use, and whether it may be. */
export interface Gauge {
  /** Gauges to choose from: of the campaign, and of the bench. */
  readonly choices: readonly string[];
  /** Null where none is named. */
  readonly chosen: string | null;
  readonly choose: (instrument: string) => void;
  /** True where the chosen one has no certificate in force today. */
  readonly isOpen: boolean;
  readonly lastDue: string | null;
  /** Why it is used all the same. */
  readonly override: string;
  readonly setOverride: (why: string) => void;
  /** What comes into the campaign with its first reading. */
  readonly kit: Kit;
}

const none: Kit = { instruments: [], calibrations: [] };

/** The gauge that is remembered by this browser, or the only one there is. */
export function useGauge(rows: ZincRows): Gauge {
  const [remembered, choose] = useRemembered('coating gauge', '');
  const [override, setOverride] = useState('');
  const own = { instruments: bodies(rows.instruments), calibrations: bodies(rows.calibrations) };
  const bench = { instruments: bodies(rows.benchInstruments), calibrations: bodies(rows.benchCalibrations) };
  const choices = [
    ...new Set([...own.instruments, ...bench.instruments].filter(isGauge).map(({ instrument }) => instrument)),
  ];
  const chosen = choices.includes(remembered)
    ? remembered
    : remembered !== unnamed && choices.length === 1
      ? (choices[0] ?? null)
      : null;
  const kit = chosen === null ? none : kitRows(chosen, { own, bench });
  const certificates = [...own.calibrations, ...kit.calibrations];
  return {
    choices,
    chosen,
    choose: (instrument) => {
      choose(instrument === '' ? unnamed : instrument);
      setOverride('');
    },
    // The server asks by the day in Greenwich, at which a reading is written down.
    isOpen: chosen !== null && !isInForce(chosen, new Date().toISOString().slice(0, 10), certificates),
    lastDue: chosen === null ? null : lastDue(chosen, certificates),
    override,
    setOverride,
    kit,
  };
}

/** Remembered where somebody chose to name no gauge. */
const unnamed = '-';

function isGauge({ kind, unit }: Row<'instruments'>): boolean {
  return kind === 'coating gauge' || unit === 'um';
}

function bodies<B>(held: readonly { readonly body: B }[]): readonly B[] {
  return held.map(({ body }) => body);
}
