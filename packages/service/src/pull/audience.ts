import type { LiveMessage } from '@provinghouse/contract';

/** Somebody who follows a pull: a screen, a terminal, a program. */
export interface Viewer {
  /** Must return at once. */
  send(message: LiveMessage): void;
  /** Bytes sent and not yet taken. */
  backlog(): number;
  /** Called when the viewer is so far behind that it is given up. */
  drop(): void;
}

export interface Audience {
  join(viewer: Viewer, greeting: readonly LiveMessage[]): () => void;
  tell(message: LiveMessage): void;
  readonly size: () => number;
  /** Viewers that were left behind and set on the newest state again, and those given up, so far. */
  readonly left: () => { readonly behind: number; readonly dropped: number };
}

/** From here on a viewer is behind: it gets the newest state only, once it has caught up. */
const behindBytes = 64 * 1024;
/** From here on it is given up; it may join again. */
const droppedBytes = 4 * 1024 * 1024;

interface Seat {
  readonly viewer: Viewer;
  /** Newest messages it has missed, one of a kind; marks, troubles and the end are never missed. */
  samples: LiveMessage | null;
  view: LiveMessage | null;
  isBehind: boolean;
}

/**
 * Tells many viewers one story. A viewer that does not take its messages fast enough misses samples and views, never what happens once, and is
 * given the newest of both when it has caught up; nobody waits for it.
 */
export function audience(): Audience {
  const seats = new Set<Seat>();
  let behind = 0;
  let dropped = 0;

  function tellOne(seat: Seat, message: LiveMessage): void {
    const backlog = seat.viewer.backlog();
    if (backlog > droppedBytes) {
      seats.delete(seat);
      dropped += 1;
      seat.viewer.drop();
      return;
    }
    const isFlow = message.kind === 'samples' || message.kind === 'view';
    if (isFlow && backlog > behindBytes) {
      if (!seat.isBehind) behind += 1;
      seat.isBehind = true;
      if (message.kind === 'samples') seat.samples = message;
      else seat.view = message;
      return;
    }
    if (seat.isBehind && backlog <= behindBytes) catchUp(seat, message);
    seat.viewer.send(message);
  }

  function catchUp(seat: Seat, message: LiveMessage): void {
    if (seat.samples && message.kind !== 'samples') seat.viewer.send(seat.samples);
    if (seat.view && message.kind !== 'view') seat.viewer.send(seat.view);
    seat.samples = null;
    seat.view = null;
    seat.isBehind = false;
  }

  return {
    join(viewer, greeting) {
      const seat: Seat = { viewer, samples: null, view: null, isBehind: false };
      for (const message of greeting) viewer.send(message);
      seats.add(seat);
      return () => void seats.delete(seat);
    },
    tell(message) {
      for (const seat of [...seats]) tellOne(seat, message);
    },
    size: () => seats.size,
    left: () => ({ behind, dropped }),
  };
}
