/** What the clock of a source was seen to do. */
export interface ClockReading {
  /** On the bench clock; never before one given earlier. */
  readonly time_s: number;
  /** Seconds the reading was longer on its way than the quickest of late. */
  readonly delay_s: number;
  /** Seconds by which the source's clock jumped just now; null when it did not. */
  readonly jumped_s: number | null;
}

/** Puts the times of one source on the bench clock. */
export interface SourceClockTracker {
  place(time_s: number, arrival_s: number): ClockReading;
}

/** Largest change of the offset per second: a source's time is never stretched by more than this. */
const SLEW = 0.002;
/** A reading from the future by more than this, or from the past at all, means the source's clock was moved. */
const AHEAD_S = 0.25;
/** Seconds at the start in which the offset may be corrected at once. */
const SETTLE_S = 0.5;
const BLOCK_S = 5;
const BLOCKS = 6;
/** Times this little out of order are rounding, not a moved clock. */
const ROUNDING_S = 1e-6;

/** The smallest offset of the last half minute, kept in blocks of five seconds. */
function smallestOffset(): { add(offset_s: number, now_s: number): number; clear(): void } {
  let blocks: number[] = [];
  let began_s = 0;
  return {
    add(offset_s, now_s) {
      if (blocks.length === 0 || now_s - began_s >= BLOCK_S) {
        blocks = [offset_s, ...blocks].slice(0, BLOCKS);
        began_s = now_s;
      } else blocks[0] = Math.min(blocks[0] ?? offset_s, offset_s);
      return Math.min(...blocks);
    },
    clear() {
      blocks = [];
    },
  };
}

/**
 * Follows a source's own clock against arrivals. The offset is the smallest arrival minus time of the last half minute: of many delays the
 * smallest varies least, so bursts and stalls do not move it. The offset is let change by at most 2 ms a second after the first half second,
 * so times stay in order and a rate is wrong by 0.2 % at most. The shortest way from sensor to bench stays unknown and stays in.
 * @param after_s no reading is laid before it; where a record is gone on with, the time of its last sample
 */
export function sourceClock(after_s = Number.NEGATIVE_INFINITY): SourceClockTracker {
  const smallest = smallestOffset();
  let offset_s: number | null = null;
  let began_s = 0;
  let lastArrival_s = 0;
  let lastTime_s = Number.NEGATIVE_INFINITY;
  let lastPlaced_s = after_s;

  function restart(arrival_s: number, time_s: number): number {
    smallest.clear();
    began_s = arrival_s;
    return smallest.add(arrival_s - time_s, arrival_s);
  }
  function follow(time_s: number, arrival_s: number, before_s: number): number {
    const target_s = smallest.add(arrival_s - time_s, arrival_s);
    if (arrival_s - began_s < SETTLE_S) return target_s;
    const most_s = SLEW * Math.max(arrival_s - lastArrival_s, 0);
    return before_s + Math.min(Math.max(target_s - before_s, -most_s), most_s);
  }
  return {
    place(time_s, arrival_s) {
      let jumped_s: number | null = null;
      if (offset_s === null) offset_s = restart(arrival_s, time_s);
      else {
        const isBack = time_s < lastTime_s - ROUNDING_S;
        const isAhead = arrival_s - time_s < offset_s - AHEAD_S;
        if (isBack || isAhead) {
          jumped_s = offset_s - (arrival_s - time_s);
          offset_s = restart(arrival_s, time_s);
        } else offset_s = follow(time_s, arrival_s, offset_s);
      }
      lastTime_s = time_s;
      lastArrival_s = arrival_s;
      lastPlaced_s = Math.max(lastPlaced_s, time_s + offset_s);
      return { time_s: lastPlaced_s, delay_s: arrival_s - time_s - offset_s, jumped_s };
    },
  };
}

/** A clock taken as it comes: its first reading is laid at its arrival, and only running backwards is a jump. */
export function freeClock(): SourceClockTracker {
  let offset_s: number | null = null;
  let lastTime_s = 0;
  return {
    place(time_s, arrival_s) {
      let jumped_s: number | null = null;
      if (offset_s === null) offset_s = arrival_s - time_s;
      else if (time_s < lastTime_s - ROUNDING_S) {
        jumped_s = time_s - lastTime_s;
        offset_s -= jumped_s;
      }
      lastTime_s = Math.max(time_s, jumped_s === null ? lastTime_s : time_s);
      return { time_s: lastTime_s + offset_s, delay_s: 0, jumped_s };
    },
  };
}

/** For sources without a clock: the time is the arrival, kept in order and not before `after_s`. */
export function arrivalClock(after_s = Number.NEGATIVE_INFINITY): SourceClockTracker {
  let last_s = after_s;
  return {
    place(time_s) {
      last_s = Math.max(last_s, time_s);
      return { time_s: last_s, delay_s: 0, jumped_s: null };
    },
  };
}
