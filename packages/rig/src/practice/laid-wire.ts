import { type Outlet, paced } from './pace.ts';
import type { PracticeWire, WireOptions } from './wire.ts';

/** Where a wire is, and what lies at its far side. */
export interface WirePlace {
  readonly address: string;
  readonly port: number | null;
  /** What kind of wire it is, for a screen: `lines over TCP on 127.0.0.1:4001`. */
  readonly over: string;
  readonly outlet: Outlet;
  /** Takes it down; called once. */
  readonly takeDown: () => Promise<void>;
}

/** A practice pull on a wire that has been laid. */
export function laidWire(options: WireOptions, place: WirePlace): PracticeWire {
  const { session, start, progress, ended, stop } = paced(options, place.outlet);
  let down: Promise<void> | null = null;
  return {
    address: place.address,
    port: place.port,
    describe: `practice rig, ${place.over}, seed ${options.seed}`,
    start,
    turnValve: session.turnValve,
    progress,
    truth: session.truth,
    ended,
    stop: () => {
      stop();
      down ??= place.takeDown();
      return down;
    },
  };
}
