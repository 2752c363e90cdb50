import type { WatchMemory } from './memory.ts';

function rounded(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function seconds(value: number): string {
  return `${value.toFixed(2)} s`;
}

/** The doubts of a pull in plain words, one sentence a kind. */
export function doubtWords(memory: WatchMemory): string[] {
  const { doubts, hold } = memory;
  const words: string[] = [];
  const say = (time_s: number | null, text: (at: string) => string): void => {
    if (time_s !== null) words.push(text(seconds(time_s)));
  };
  say(hold.firstRejected_s, (at) => {
    const value = rounded(hold.firstRejected_kN ?? 0);
    return hold.rejected === 1
      ? `One reading stood alone (${value} kN at ${at}) and was left out as a spike.`
      : `${hold.rejected} readings stood alone and were left out as spikes, the first ${value} kN at ${at}.`;
  });
  if (doubts.backwards > 0) {
    words.push(
      `${doubts.backwards} readings had a time before the last one and were left out, the first at ${seconds(doubts.firstBackwards_s)}.`,
    );
  }
  const { gaps } = doubts;
  if (gaps.count > 0) {
    const from = `${seconds(gaps.longest_s)} from ${seconds(gaps.longestFrom_s)}`;
    words.push(
      gaps.count === 1 ? `No reading for ${from}.` : `${gaps.count} gaps without readings, the longest ${from}.`,
    );
  }
  say(
    doubts.stuckFrom_s,
    (at) =>
      `The force stood at exactly ${rounded(doubts.stuckAt_kN)} kN for ${seconds(doubts.stuckFor_s)} from ${at}: stuck, or at the limit of what the rig can show.`,
  );
  say(doubts.belowZeroFrom_s, (at) => `The force ran below zero from ${at}: the sign may be swapped.`);
  say(
    doubts.jumpedAt_s,
    (at) =>
      `The force jumped from ${rounded(doubts.jumpedFrom_kN)} to ${rounded(doubts.jumpedTo_kN)} kN at ${at} and stayed: another unit, or a fault of the signal?`,
  );
  say(doubts.rangePassed_s, (at) => `The force passed the range the rig is verified for at ${at}.`);
  say(doubts.fixturePassed_s, (at) => `The force passed the limit of the fixture at ${at}.`);
  say(
    doubts.tableLost_s,
    (at) => `The table was not read from ${at} on for a while: stage and forecast stood still meanwhile.`,
  );
  say(doubts.withdrawnParting_s, (at) => `A parting was called at ${at} and withdrawn: the force came back.`);
  say(doubts.roseAfterEnd_s, (at) => `After the end the force rose above its maximum, at ${at}.`);
  return words;
}
