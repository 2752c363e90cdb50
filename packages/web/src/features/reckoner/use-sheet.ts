import { meaningOf } from '@provinghouse/core';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useOwnStandards } from '../../lib/own-standards.ts';
import { useAddressState } from '../../lib/use-address-state.ts';
import { chainValues } from './chain-values.ts';
import { type ChainAtHand, calculationOf, type Sheet } from './sheet.ts';
import { sheetAddress } from './sheet-address.ts';
import {
  addedBelow,
  openedAlone,
  sent,
  withChain,
  withEntries,
  withEntry,
  withoutChain,
  withoutStep,
} from './sheet-edit.ts';
import { reckonSheet, type SheetReckoning } from './sheet-reckoning.ts';

/** What can be done with the sheet. */
export interface SheetActions {
  readonly type: (at: { readonly step: number; readonly key: string }, entry: string) => void;
  readonly fill: (step: number, entries: Readonly<Record<string, string>>) => void;
  readonly open: (calculation: string) => void;
  readonly openExample: (calculation: string) => void;
  readonly add: (calculation: string) => void;
  readonly takeOff: (step: number) => void;
  readonly send: (
    result: { readonly step: number; readonly key: string },
    to: { readonly calculation: string; readonly key: string },
  ) => void;
  readonly chain: (chain: ChainAtHand | null) => void;
}

export interface UsedSheet {
  readonly sheet: Sheet;
  readonly reckoned: SheetReckoning;
  readonly actions: SheetActions;
  /** Goes up when a step was opened, with the step whose first field is to be in focus. */
  readonly focus: { readonly step: number; readonly count: number };
}

/** The sheet of the address, reckoned anew with every entry. */
export function useSheet(): UsedSheet {
  const own = useOwnStandards();
  const [sheet, setSheet] = useAddressState(sheetAddress);
  const reckoned = useMemo(() => reckonSheet(sheet, own), [sheet, own]);
  const [focus, setFocus] = useState({ step: 0, count: 0 });
  const remembered = useRef(new Map<string, string>());
  const now = useRef({ sheet, reckoned });
  useEffect(() => {
    now.current = { sheet, reckoned };
  }, [sheet, reckoned]);
  const opened = useCallback(
    (next: Sheet | null, step: number) => {
      if (next === null) return;
      setSheet(next, 'push');
      setFocus(({ count }) => ({ step, count: count + 1 }));
    },
    [setSheet],
  );
  const actions = useMemo(
    (): SheetActions => ({
      type: (at, entry) => {
        const { sheet: from } = now.current;
        const name = from.steps[at.step - 1]?.calculation ?? '';
        remembered.current.set(meaningOf(name, at.key, 'input'), entry);
        now.current = { ...now.current, sheet: withEntry(from, at, entry) };
        setSheet(now.current.sheet);
      },
      fill: (step, entries) => setSheet(withEntries(now.current.sheet, step, entries), 'push'),
      open: (name) => opened(openedAlone(name, now.current.reckoned, now.current.sheet, remembered.current), 1),
      openExample: (name) => {
        const example = calculationOf(name)?.example ?? {};
        const entries = Object.fromEntries(Object.entries(example).map(([key, value]) => [key, String(value)]));
        opened({ ...now.current.sheet, steps: [{ calculation: name, entries }] }, 1);
      },
      add: (name) => {
        const { sheet: from, reckoned: values } = now.current;
        opened(addedBelow(name, values, from), from.steps.length + 1);
      },
      takeOff: (step) => setSheet(withoutStep(now.current.sheet, step, now.current.reckoned), 'push'),
      send: (result, to) => {
        const next = sent(result, to, now.current.reckoned, now.current.sheet);
        if (next !== null) opened(next.sheet, next.step);
      },
      chain: (chain) => {
        const { sheet: from, reckoned: values } = now.current;
        const next =
          chain === null ? withoutChain(from, values) : withChain(from, chain, chainValues(chain, own).values);
        setSheet(next, 'push');
      },
    }),
    [setSheet, opened, own],
  );
  return { sheet, reckoned, actions, focus };
}
