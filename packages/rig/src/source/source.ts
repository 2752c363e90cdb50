import type { ReadingQuality } from '@provinghouse/contract';
import type { Channel } from '../channel/channel.ts';

/** One value of one channel, in the bench unit of what it measures (kN, mm). */
export interface RawReading {
  readonly channel: string;
  /** Bench unit. Never NaN: what could not be read is rejected bytes, not a reading. */
  readonly value: number;
  /** Seconds on the source's own clock where it sends one, else the time of arrival. */
  readonly time_s: number;
  /** Seconds on the bench clock (benchNow_s) when the bytes came in. */
  readonly arrival_s: number;
  readonly quality: ReadingQuality;
}

/** Where a source puts what it hears. Calls return at once; the source never waits for a viewer. */
export interface SourceSink {
  readings(batch: readonly RawReading[]): void;
  /** Bytes that gave no reading, kept as they came. */
  rejected(bytes: Uint8Array, why: string): void;
  /** Something the operator should know now, in plain words. */
  trouble(words: string): void;
  /** The source will send nothing more. */
  ended(why: string): void;
  /** What comes says of itself that it is simulated. */
  practice?(): void;
  /** Every byte as it came, for testing the wires; with a place where it came as a piece of its own and not on a stream of lines. */
  bytes?(bytes: Uint8Array, arrival_s: number, piece?: RawPiece): void;
  /** The connection stands, or is away. */
  connection?(isOpen: boolean): void;
}

/** Where a piece of bytes came from. */
export interface RawPiece {
  /** Topic, or kind and address of the registers. */
  readonly place: string;
  readonly isText: boolean;
}

/**
 * Whose clock the readings carry: the source's own, running as fast as ours; the time of arrival; or one of its own that may run
 * faster or slower than ours (a replayed file, practice in a hurry) and is taken as it comes.
 */
export type SourceClock = 'own' | 'arrival' | 'free';

/** One way into the bench: a serial line, a socket, a register map, a topic, a file, a keyboard. */
export interface Source {
  /** What this source is, for a screen and for the header of the record. */
  readonly describe: string;
  /** What it measures; a source without a list is taken to send force, table and extension in bench units. */
  readonly channels?: readonly Channel[];
  /** How its lines are read, where it reads lines. */
  readonly pattern?: string;
  /** 'arrival' unless said. */
  readonly clock?: SourceClock;
  /** True where readings come when somebody enters them, so that silence means nothing. */
  readonly isPatient?: boolean;
  /** Resolves once the source listens (it may still be trying to connect); rejects only on a configuration that cannot work. */
  start(sink: SourceSink): Promise<void>;
  /** Resolves once nothing more will come. Stopping twice is harmless. */
  stop(): Promise<void>;
}
