import type { WireTestMessage } from '@provinghouse/contract';
import { isInputError } from '@provinghouse/core';
import { listenToWire, type WireListener, wireFindings } from '@provinghouse/rig';
import type { OpenedWires, WiredRig } from './wired-rig.ts';

/** Somebody who looks on while wires are tested. */
export interface WireViewer {
  /** Must return at once. */
  send(message: WireTestMessage): void;
  /** Bytes sent and not yet taken. */
  backlog(): number;
  /** Called when there is nothing more to come. */
  drop(): void;
}

type Over = Extract<WireTestMessage, { readonly kind: 'over' }>['why'];

/** The wires of one rig, listened to and not recorded, for all who look on. */
export interface WireTest {
  /** Gives the way out; when the last has gone the wires are let go. */
  join(viewer: WireViewer): () => void;
  /** Resolves once the wires are free. */
  end(why: Over): Promise<void>;
  isOver(): boolean;
}

export interface WireTestOptions {
  readonly wired: WiredRig;
  /** Waited for before the wires are opened: the end of a test before this one. */
  readonly after?: Promise<void> | undefined;
  /** The test ends by itself after so long, s. */
  readonly limit_s: number;
}

/** Four reports a second. */
const reportEvery_ms = 250;
/** A viewer with more than this unread misses reports; each holds all there is to know. */
const behindBytes = 64 * 1024;

interface Run {
  readonly viewers: Set<WireViewer>;
  readonly began_ms: number;
  readonly limit_s: number;
  listeners: readonly WireListener[];
  wires: OpenedWires | null;
  ended: Promise<void> | null;
}

/** Opens the wires of a rig and tells four times a second what comes over them, until the last viewer leaves or the time is up. */
export function startWireTest({ wired, after, limit_s }: WireTestOptions): WireTest {
  const run: Run = {
    viewers: new Set(),
    began_ms: performance.now(),
    limit_s,
    listeners: [],
    wires: null,
    ended: null,
  };
  const opened = open(run, wired, after).catch((error: unknown) => {
    if (run.ended === null) tell(run, refusalOf(error));
    void end(null);
  });
  const timer = setInterval(() => {
    if (seconds(run) >= limit_s) void end('limit');
    else if (run.listeners.length > 0) tell(run, reportOf(run));
  }, reportEvery_ms);

  async function close(): Promise<void> {
    await opened;
    await Promise.all(run.listeners.map((listener) => listener.stop()));
    await run.wires?.close();
  }
  function end(why: Over | null): Promise<void> {
    if (run.ended) return run.ended;
    clearInterval(timer);
    if (why !== null) tell(run, { kind: 'over', why });
    for (const viewer of run.viewers) viewer.drop();
    run.viewers.clear();
    // A line that breaks while it is closed is closed all the same.
    run.ended = close().catch(() => undefined);
    return run.ended;
  }
  return {
    join(viewer) {
      run.viewers.add(viewer);
      return () => {
        run.viewers.delete(viewer);
        if (run.viewers.size === 0) void end(null);
      };
    },
    end,
    isOver: () => run.ended !== null,
  };
}

async function open(run: Run, wired: WiredRig, after: Promise<void> | undefined): Promise<void> {
  await after;
  run.wires = await (wired.openForTest?.() ?? wired.open({ piece: '', nominalSize_mm: 8, links: 5 }));
  if (run.ended !== null) return;
  const listeners = run.wires.sources.map(listenToWire);
  run.listeners = listeners;
  for (const listener of listeners) await listener.start();
}

function seconds({ began_ms }: Run): number {
  return (performance.now() - began_ms) / 1000;
}

function reportOf(run: Run): WireTestMessage {
  const reports = run.listeners.map((listener) => listener.report());
  const spent_s = seconds(run);
  return {
    kind: 'report',
    seconds: spent_s,
    left_s: Math.max(0, run.limit_s - spent_s),
    reports,
    findings: wireFindings(reports),
  };
}

function refusalOf(error: unknown): WireTestMessage {
  const words = error instanceof Error ? error.message : String(error);
  return { kind: 'refused', code: isInputError(error) ? error.code : 'pull/wires-fault', words };
}

function tell({ viewers }: Run, message: WireTestMessage): void {
  for (const viewer of viewers) if (message.kind !== 'report' || viewer.backlog() < behindBytes) viewer.send(message);
}
