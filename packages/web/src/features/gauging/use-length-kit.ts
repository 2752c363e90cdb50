import type { Row } from '@provinghouse/contract';
import type { GaugingInstrument } from '@provinghouse/core';
import { useState } from 'react';
import { isInForce, lastDue } from '../../lib/entry/certificate-day.ts';
import { type Kit, kitRows } from '../../lib/entry/kit-rows.ts';
import { useRemembered } from '../../lib/use-remembered.ts';
import { dayOf, overrideName, readsLengths } from './bench-memory.ts';
import { type DeskRows, instrumentBehind } from './gauging-desk.ts';
import type { LogEntry } from './gauging-log.ts';

/** The instrument in hand, and whether it may be used. */
export interface LengthKit {
  readonly choices: readonly { readonly value: string; readonly isOfBench: boolean }[];
  readonly chosen: string | null;
  readonly choose: (instrument: string) => void;
  readonly instrument: GaugingInstrument | null;
  readonly day: string;
  /** True where it has no certificate in force today, or the record said so. */
  readonly isOpen: boolean;
  readonly lastDue: string | null;
  /** Why it is used all the same; null until somebody said so. */
  readonly reason: string | null;
  readonly giveReason: (reason: string) => void;
  /** What comes into the campaign with its readings. */
  readonly rows: Kit;
  /** Every instrument known here, whatever it reads. */
  readonly known: ReadonlySet<string>;
}

const nothing: Kit = { instruments: [], calibrations: [] };
const remembered = (name: string) => `provinghouse-remembered ${name}`;

/** The instrument this browser remembers, or the only one there is. */
export function useLengthKit(rows: DeskRows, log: readonly LogEntry[]): LengthKit {
  const [kept, choose] = useRemembered('length instrument', '');
  const [, setGiven] = useState(0);
  const own = { instruments: bodies(rows.instruments), calibrations: bodies(rows.calibrations) };
  const bench = { instruments: bodies(rows.benchInstruments), calibrations: bodies(rows.benchCalibrations) };
  const ofBench = bench.instruments.filter((row) => !own.instruments.some((one) => one.instrument === row.instrument));
  const all = [...own.instruments, ...ofBench];
  const choices = all.filter(readsLengths).map((row) => ({ value: row.instrument, isOfBench: ofBench.includes(row) }));
  const [only] = choices.length === 1 ? choices : [];
  const chosen = (choices.find(({ value }) => value === kept) ?? only)?.value ?? null;
  const row = all.find(({ instrument }) => instrument === chosen) ?? null;
  const kit = chosen === null ? nothing : kitRows(chosen, { own, bench });
  const calibrations: readonly Row<'calibrations'>[] = [...own.calibrations, ...kit.calibrations];
  const day = dayOf(new Date().toISOString());
  const reasonPlace = remembered(overrideName(chosen ?? '', day));
  return {
    choices,
    chosen,
    choose,
    instrument: row === null ? null : instrumentBehind(row, calibrations),
    day,
    isOpen: chosen !== null && (!isInForce(chosen, day, calibrations) || wasRefused(chosen, log)),
    lastDue: chosen === null ? null : lastDue(chosen, calibrations),
    reason: localStorage.getItem(reasonPlace),
    giveReason: (reason) => {
      localStorage.setItem(reasonPlace, reason);
      setGiven((times) => times + 1);
    },
    rows: kit,
    known: new Set(all.map(({ instrument }) => instrument)),
  };
}

/** The record knows better than this browser which certificates are in force. */
function wasRefused(instrument: string, log: readonly LogEntry[]): boolean {
  return log.some(
    ({ state, fault, rows }) =>
      state === 'refused' &&
      fault?.fault === 'entry/certificate-not-in-force' &&
      rows.some((row) => row.instrument === instrument),
  );
}

function bodies<B>(held: readonly { readonly body: B }[]): readonly B[] {
  return held.map(({ body }) => body);
}
