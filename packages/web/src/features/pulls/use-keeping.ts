import type { FileEntry, Row } from '@provinghouse/contract';
import { useState } from 'react';
import type { Fault } from '../../lib/request.ts';
import { keepPull } from './keep-pull.ts';
import { type PullFaults, type PullTyped, pullFaults } from './pull-typed.ts';
import type { Desk } from './use-desk.ts';

interface Keeping {
  readonly faults: PullFaults;
  /** What the record said against it; null while nothing. */
  readonly refused: Fault | null;
  readonly asksOverride: boolean;
  readonly isOnItsWay: boolean;
  /** Sends the pull unless a field is at fault; `isReady` false shows the faults only. */
  readonly submit: (make: () => ToSend, isReady: boolean) => void;
}

interface ToSend {
  readonly row: Row<'pulls'>;
  readonly files?: readonly FileEntry[];
}

const noCertificate = 'entry/certificate-not-in-force';

/** Sends a pull on its way once its fields are in order, and asks for the reason where the rig has no certificate in force. */
export function useKeeping(desk: Desk, typed: PullTyped, onKept: (row: Row<'pulls'>) => void): Keeping {
  const [isShown, setShown] = useState(false);
  const [refused, setRefused] = useState<Fault | null>(null);
  const [refusedRig, setRefusedRig] = useState<string | null>(null);
  const [isOnItsWay, setOnItsWay] = useState(false);
  const asksOverride = refusedRig !== null && refusedRig === typed.rig;
  const faults = pullFaults(typed, desk, asksOverride);
  const send = async ({ row, files = [] }: ToSend) => {
    setOnItsWay(true);
    setRefused(null);
    const override = asksOverride ? typed.override.trim() : null;
    const outcome = await keepPull(desk, { row, files, override });
    setOnItsWay(false);
    if (outcome.kept) return onKept(row);
    if (outcome.fault.fault === noCertificate) {
      setRefusedRig(row.rig);
      setShown(false);
    }
    setRefused(outcome.fault);
  };
  return {
    faults: isShown ? faults : {},
    refused,
    asksOverride,
    isOnItsWay,
    submit: (make, isReady) => {
      setShown(true);
      if (isReady && Object.keys(faults).length === 0 && !isOnItsWay) void send(make());
    },
  };
}
