import type { DoubtKind, ReadingQuality } from '@provinghouse/contract';
import type { Channel } from './channel.ts';
import { ratioOfJump, type UnitRatio, unitRatios } from './unit-jump.ts';

/** Looks at the readings of one channel as they come, O(1) each; doubts are said once an occasion. Nothing is altered or left out. */
export interface ChannelGuard {
  /** Quality of a reading in bench units; its time on the source's clock. */
  quality(value: number, time_s: number): ReadingQuality;
}

const STUCK_S = 2;
const STUCK_READINGS = 20;
const NEGATIVE_S = 0.3;
const NEGATIVE_READINGS = 10;
const JUMP_READINGS = 10;

/** Told of a doubt, in words and by its kind. */
export type Doubt = (words: string, kind: DoubtKind) => void;

/** Below this a force or a length is as good as nothing: 2 % of the range, or 20 steps, or 0.5 of the bench unit. */
function floorOf(channel: Channel): number {
  if (channel.range) return 0.02 * Math.max(Math.abs(channel.range[0]), Math.abs(channel.range[1]));
  return channel.resolution === null ? 0.5 : 20 * channel.resolution;
}

function stuckWatch(channel: Channel, doubt: Doubt): (value: number, time_s: number) => boolean {
  let last: number | null = null;
  let since_s = 0;
  let same = 0;
  /** Share of lately read values that differed from the one before. */
  let liveliness = 0;
  let said = false;
  return (value, time_s) => {
    if (value !== last) {
      if (last !== null) liveliness = liveliness * 0.95 ** Math.min(same, 100) * 0.95 + 0.05;
      last = value;
      since_s = time_s;
      same = 0;
      said = false;
      return false;
    }
    same++;
    const isStuck = liveliness > 0.2 && same >= STUCK_READINGS && time_s - since_s >= STUCK_S;
    if (isStuck && !said) {
      said = true;
      doubt(
        `${channel.name} has stood at exactly ${value} ${channel.benchUnit} for ${STUCK_S} s after moving all the time: stuck?`,
        'stuck',
      );
    }
    return isStuck;
  };
}

function signWatch(channel: Channel, doubt: Doubt): (value: number, time_s: number) => void {
  const floor = floorOf(channel);
  let last = 0;
  let since_s = 0;
  let negative = 0;
  let said = false;
  return (value, time_s) => {
    const hasTurned = last > floor && value < 0 && Math.abs(value + last) < 0.1 * last;
    if (hasTurned)
      doubt(
        `${channel.name} went from ${last} to ${value} ${channel.benchUnit} at once: sign turned over?`,
        'sign turned',
      );
    last = value;
    if (value >= -floor / 2) {
      negative = 0;
      said = false;
      return;
    }
    if (negative === 0) since_s = time_s;
    negative++;
    if (said || negative < NEGATIVE_READINGS || time_s - since_s < NEGATIVE_S) return;
    said = true;
    doubt(
      `${channel.name} stays below zero (${value} ${channel.benchUnit}): is the sign the wrong way round?`,
      'below zero',
    );
  };
}

interface Jump {
  readonly from: number;
  /** Where the force stood to be by its trend, in the new unit, and what the trend adds with each reading. */
  readonly level: number;
  readonly trend: number;
  readonly to: UnitRatio;
  readonly first: number;
  count: number;
  hasMoved: boolean;
}

/** A jump by the ratio of two units that lasts: after ten readings the level still fits within 5 % (and half of what its trend before the jump has added since), and it has moved. */
function unitWatch(channel: Channel, doubt: Doubt): (value: number) => void {
  const ratios = unitRatios(channel.unit);
  const floor = floorOf(channel);
  let last = 0;
  let trend = 0;
  let jump: Jump | null = null;
  return (value) => {
    const before = last;
    const due = before + trend;
    last = value;
    if (jump) {
      const climbed = jump.trend * jump.count;
      const isHeld = Math.abs(value - jump.level - climbed) <= 0.05 * Math.abs(jump.level) + 0.5 * Math.abs(climbed);
      if (!isHeld) jump = null;
      else {
        jump.count++;
        jump.hasMoved ||= value !== jump.first;
        if (jump.count < JUMP_READINGS || !jump.hasMoved) return;
        doubt(
          `${channel.name} jumped from ${jump.from} to ${jump.first} ${channel.benchUnit}: was the panel switched ${jump.to.words}?`,
          'unit switched',
        );
        jump = null;
        return;
      }
    }
    if (Math.abs(before) < floor) {
      trend = 0;
      return;
    }
    const to = ratioOfJump(ratios, value / due);
    if (to)
      jump = {
        from: before,
        to,
        level: due * to.ratio,
        trend: trend * to.ratio,
        first: value,
        count: 1,
        hasMoved: false,
      };
    // A jump of any kind is no trend.
    trend = Math.abs(value - due) > 0.2 * Math.abs(before) ? 0 : trend + 0.3 * (value - before - trend);
  };
}

/**
 * A guard for one channel. A reading outside the range is 'out of range'. Doubts (nothing is dropped for them): a value that stands
 * exactly still for 2 s and 20 readings after it moved all the time; a force that stays below zero, or turns its sign in one step; a
 * jump by the ratio of two units. Common practice; the limits are this project's own.
 */
export function channelGuard(channel: Channel, doubt: Doubt): ChannelGuard {
  const isStuck = stuckWatch(channel, doubt);
  const watchSign = channel.signal === 'force' ? signWatch(channel, doubt) : null;
  const watchUnit = unitWatch(channel, doubt);
  return {
    quality(value, time_s) {
      watchSign?.(value, time_s);
      watchUnit(value);
      const stuck = isStuck(value, time_s);
      if (channel.range && (value < channel.range[0] || value > channel.range[1])) return 'out of range';
      return stuck ? 'stuck' : 'good';
    },
  };
}
