import { benchNow_s } from '../clock/bench-clock.ts';

/** An open connection. */
export interface Wire {
  /** Resolves with the reason once the connection is gone. */
  readonly closed: Promise<string>;
  close(): void | Promise<void>;
}

export interface KeepOpenOptions {
  readonly describe: string;
  /** Opens the connection once; rejects when it cannot be had now. */
  open(): Promise<Wire>;
  trouble(words: string): void;
  /** The connection stands, or is away. */
  connection?: ((isOpen: boolean) => void) | undefined;
}

/** A connection being kept. */
export interface Keeper {
  /** Resolves once the first attempt has come out one way or the other, or after a second. */
  readonly tried: Promise<void>;
  /** Resolves once nothing more will come. */
  stop(): Promise<void>;
}

const TRIED_S = 1;
const FIRST_WAIT_S = 0.1;
const LONGEST_WAIT_S = 5;

function reasonOf(error: unknown): string {
  if (error instanceof AggregateError && error.errors.length > 0) return reasonOf(error.errors[0]);
  return error instanceof Error ? error.message || error.name : String(error);
}

interface Pause {
  readonly done: Promise<void>;
  end(): void;
}

function pause(seconds: number): Pause {
  const { promise, resolve } = Promise.withResolvers<void>();
  const timer = setTimeout(resolve, seconds * 1000);
  return {
    done: promise,
    end() {
      clearTimeout(timer);
      resolve();
    },
  };
}

/**
 * Keeps a connection open until stopped: tries again after 0.1 s, 0.2 s, 0.4 s ... 5 s, and says when it was lost and how long it was away.
 * A connection that held for a second starts the waits anew.
 */
export function keepOpen({ describe, open, trouble, connection }: KeepOpenOptions): Keeper {
  const first = Promise.withResolvers<void>();
  let isStopped = false;
  let wire: Wire | null = null;
  let waiting: Pause | null = null;

  async function wait(seconds: number): Promise<void> {
    if (isStopped) return;
    waiting = pause(seconds);
    await waiting.done;
    waiting = null;
  }
  async function keep(): Promise<void> {
    let wait_s = FIRST_WAIT_S;
    let awaySince_s: number | null = null;
    while (!isStopped) {
      try {
        wire = await open();
        first.resolve();
        if (isStopped) await wire.close();
        else connection?.(true);
        if (awaySince_s !== null && !isStopped)
          trouble(`${describe} is back after ${(benchNow_s() - awaySince_s).toFixed(2)} s.`);
        const opened_s = benchNow_s();
        const why = await wire.closed;
        wire = null;
        if (!isStopped) connection?.(false);
        if (benchNow_s() - opened_s > 1) wait_s = FIRST_WAIT_S;
        awaySince_s = benchNow_s();
        if (!isStopped) trouble(`${describe}: the connection was lost (${why}); trying again.`);
      } catch (error) {
        first.resolve();
        if (!isStopped) connection?.(false);
        if (awaySince_s === null && !isStopped) {
          awaySince_s = benchNow_s();
          trouble(`${describe} cannot be reached (${reasonOf(error)}); trying again.`);
        }
      }
      await wait(wait_s);
      wait_s = Math.min(2 * wait_s, LONGEST_WAIT_S);
    }
  }
  const kept = keep();
  const tired = pause(TRIED_S);
  return {
    tried: Promise.race([first.promise, tired.done]).finally(() => tired.end()),
    async stop() {
      isStopped = true;
      waiting?.end();
      await wire?.close();
      await kept;
    },
  };
}
