import { InputError } from '@provinghouse/core';
import { checkPracticeOptions, type PracticeOptions } from './practice-options.ts';
import type { PracticeTruth } from './practice-truth.ts';

/** How a practice pull is paced on a wire. */
export interface WireOptions extends PracticeOptions {
  /** Simulated seconds for each real one: 1 unless said; `as fast as it is read` lets the reader set the pace. */
  readonly speed?: number | 'as fast as it is read';
  /**
   * When time begins to pass: once somebody reads (MQTT: once connected to the broker), or not before `start`. After
   * `start` it still waits for a reader, unless `whileUnread` is `run on`.
   */
  readonly startWhen?: 'read' | 'told';
  /** Simulated seconds the record runs on after parting; 2. */
  readonly after_s?: number;
  /** What happens to time while nobody reads: it stands still, so that nothing is lost, or it runs on as at a real rig. */
  readonly whileUnread?: 'wait' | 'run on';
  /** Begins that many simulated seconds into the pull, as when a recording is gone on with; at most 3600. */
  readonly from_s?: number;
}

export interface WireProgress {
  /** Samples made so far, and those of them handed to the wire. */
  readonly made: number;
  readonly sent: number;
  readonly time_s: number;
  readonly hasParted: boolean;
  readonly readers: number;
}

/** A practice rig on a wire. */
export interface PracticeWire {
  /** Where to read it: `tcp://127.0.0.1:4001`, `modbus://...`, `mqtt://.../base`, or the path of the pseudo-terminal. */
  readonly address: string;
  readonly port: number | null;
  readonly describe: string;
  readonly start: () => void;
  /** Turns the valve: table speed unloaded, mm/min. */
  readonly turnValve: (mm_per_min: number) => void;
  readonly progress: () => WireProgress;
  readonly truth: () => PracticeTruth;
  /** Resolves when the whole pull has been handed over, or the wire was stopped; rejects when the wire broke. */
  readonly ended: Promise<WireProgress>;
  /** Takes the wire down and frees its port, path or topic. Stopping twice is harmless. */
  readonly stop: () => Promise<void>;
}

/** Checks what all wires share. */
export function checkWireOptions(options: WireOptions): void {
  checkPracticeOptions(options);
  const { speed = 1, after_s = 2, from_s = 0 } = options;
  if (typeof speed === 'number' && !(speed > 0 && speed <= 1000)) {
    throw new InputError('practice/option', `practice rig: speed is ${speed}; give above 0 to 1000`, { speed });
  }
  if (!(after_s >= 0 && after_s <= 600)) {
    throw new InputError('practice/option', `practice rig: after_s is ${after_s}; give 0 to 600`, { after_s });
  }
  if (!(from_s >= 0 && from_s <= 3600)) {
    throw new InputError('practice/option', `practice rig: from_s is ${from_s}; give 0 to 3600`, { from_s });
  }
}

/** What a wire gave when it could not be laid: port taken, broker not there, helper program missing. */
export function wireFault(where: string, error: unknown): InputError {
  const why = error instanceof Error ? error.message : String(error);
  return new InputError('practice/wire', `practice rig: cannot serve on ${where}: ${why}`, { where });
}
