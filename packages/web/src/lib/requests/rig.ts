import type { ArmInput, GoOnInput, RigDesk } from '@provinghouse/contract';
import { send } from '../send.ts';

/** Address of all rigs. */
export const rigsAddress = '/api/rigs';

/** Addresses of one rig. */
export function rigAddress(rig: string): string {
  return `/api/rigs/${encodeURIComponent(rig)}`;
}

/** What an operator may say to a rig. */
export const rigOrders = {
  arm: (rig: string, input: ArmInput) => send<RigDesk>(`${rigAddress(rig)}/arm`, input),
  start: (rig: string) => send<RigDesk>(`${rigAddress(rig)}/start`, {}),
  stop: (rig: string) => send<RigDesk>(`${rigAddress(rig)}/stop`, {}),
  mark: (rig: string, words: string) => send<RigDesk>(`${rigAddress(rig)}/mark`, { words }),
  recover: (rig: string, spool: string) => send<RigDesk>(`${rigAddress(rig)}/recover`, { spool }),
  goOn: (rig: string, input: GoOnInput) => send<RigDesk>(`${rigAddress(rig)}/go-on`, input),
} as const;
