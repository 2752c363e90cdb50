import { type BreakReading, examinersDiffer } from './tally.ts';

/** Readings of one link by two readers or more that are not the same. */
export interface LinkInDispute {
  readonly link: number;
  /** Each place said, once, in the order of the readings; one only where the readers agree on it. */
  readonly positions: readonly string[];
  readonly modes: readonly string[];
}

/** How the readings of one piece stand to each other. */
export interface ReaderStanding {
  /**
   * `one reader`: there is nothing to compare. `differ`: on a link that two read. `apart`: there are more readers than one and no link
   * that two of them read, so that they differ on which link parted, or two parted. `agree`: on every link that two read.
   */
  readonly state: 'unread' | 'one reader' | 'agree' | 'differ' | 'apart';
  /** Readers in the order of their first readings. */
  readonly readers: readonly string[];
  /** Links read, in their order. */
  readonly links: readonly number[];
  /** Links that one of several readers read alone. */
  readonly readOnce: readonly number[];
  readonly disputed: readonly LinkInDispute[];
  /** The reading that counts: the first (see {@link tallyBreaks}); null where there is none. */
  readonly counted: BreakReading | null;
  /** Some say that it parted in the grip and some not; one who does is enough for `partedInGrip`. */
  readonly isGripInDispute: boolean;
}

/**
 * How the readings of a piece stand to each other, and which one counts. Readers are compared on the links that two of them read, as in
 * {@link examinersDiffer}; nothing is settled here, and every reading stands.
 *
 * @param breaks readings of one piece, in the order in which they were kept
 */
export function readerStanding(breaks: readonly BreakReading[]): ReaderStanding {
  const byLink = Map.groupBy(breaks, ({ link }) => link);
  const links = [...byLink.keys()].sort((a, b) => a - b);
  const readers = [...new Set(breaks.map(({ examiner }) => examiner))];
  const disputed = links.flatMap((link): LinkInDispute[] => {
    const readings = byLink.get(link) ?? [];
    const positions = [...new Set(readings.map(({ position }) => position))];
    const modes = [...new Set(readings.map(({ mode }) => mode))];
    return positions.length + modes.length > 2 ? [{ link, positions, modes }] : [];
  });
  const readOnce = readers.length < 2 ? [] : links.filter((link) => byLink.get(link)?.length === 1);
  const ofGrip = new Set(
    breaks.filter(({ link, position }) => position === 'in grip' || link === 0).map(({ examiner }) => examiner),
  );
  return {
    state: stateOf({
      readers: readers.length,
      isReadTwice: readOnce.length < links.length,
      isDisputed: examinersDiffer(breaks),
    }),
    readers,
    links,
    readOnce,
    disputed,
    counted: breaks[0] ?? null,
    isGripInDispute: ofGrip.size > 0 && ofGrip.size < readers.length,
  };
}

interface Compared {
  readonly readers: number;
  readonly isReadTwice: boolean;
  readonly isDisputed: boolean;
}

function stateOf({ readers, isReadTwice, isDisputed }: Compared): ReaderStanding['state'] {
  if (readers === 0) return 'unread';
  if (readers === 1) return 'one reader';
  if (!isReadTwice) return 'apart';
  return isDisputed ? 'differ' : 'agree';
}
