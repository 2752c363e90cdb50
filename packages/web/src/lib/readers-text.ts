import type { LinkInDispute, ReaderStanding } from '@provinghouse/core';

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

function readersOf({ readers }: ReaderStanding): string {
  return `${numbers[readers.length] ?? readers.length} readers`;
}

function saidOf({ positions, modes }: LinkInDispute): string {
  return [positions, modes].flatMap((said) => (said.length > 1 ? [said.join(' / ')] : [])).join(', ');
}

function disputeOf({ disputed, links }: ReaderStanding): string {
  const isOne = links.length === 1;
  return disputed.map((one) => (isOne ? saidOf(one) : `link ${one.link}, ${saidOf(one)}`)).join('; ');
}

/** In a few words, for a line of a table; null while there is nothing to compare. */
function short(standing: ReaderStanding): string | null {
  switch (standing.state) {
    case 'differ':
      return `${readersOf(standing)} differ: ${disputeOf(standing)}, not settled`;
    case 'apart':
      return `${readersOf(standing)} name different links: ${standing.links.join(' / ')}`;
    case 'agree':
      return `${readersOf(standing)} agree`;
    default:
      return null;
  }
}

/** How the readers of one piece agree, in sentences. Part of the catalogue in text.ts. */
export const readersText = {
  short,
  says: (standing: ReaderStanding): string => {
    const words = short(standing);
    if (words === null) return 'One person has read it, so there is nothing to compare.';
    const once = standing.state === 'apart' ? [] : standing.readOnce;
    const rest = once.length === 0 ? '' : ` Read by one of them only: link ${once.join(', ')}.`;
    return `${words.charAt(0).toUpperCase()}${words.slice(1)}.${rest}`;
  },
  /** By `tallyBreaks` and `partedInGrip` of core, which judging asks. */
  counted: ({ counted, isGripInDispute }: ReaderStanding): string => {
    if (counted === null) return '';
    const grip = isGripInDispute
      ? ' Some of them saw it part in the grip: one is enough for its force to count as “at least” only.'
      : '';
    return `Counted: ${counted.position}, ${counted.mode}, as ${counted.examiner} read it, whose reading was kept first.${grip}`;
  },
  rule: 'Every reading stands. Where there are several, the one kept first is counted, in the tables of breaks and in the law of a long chain; one reader who saw the piece part in the grip is enough for its force to count as “at least” only.',
} as const;
