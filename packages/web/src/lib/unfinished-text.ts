import type { UnfinishedHow } from '@provinghouse/contract';

/** Words for recordings that wait, to be gone on with or kept as they are, and for the keeping. */
export const unfinishedText = {
  label: 'Recordings that wait',
  title: (piece: string, pull: string) => `${piece}, pull ${pull}`,
  how: {
    'broken off': (at: string) => `Begun ${at}. It broke off: the program or the power went away while it ran.`,
    stopped: (at: string) => `Begun ${at}. It was left when the program was stopped.`,
    silence: (at: string) => `Begun ${at}. It was closed when the rig fell silent.`,
    ended: (at: string) => `Begun ${at}. It came to its end and could not be kept yet.`,
  } satisfies Record<UnfinishedHow, (at: string) => string>,
  found: (samples: string, length: string, maximum: string) =>
    `On disc: ${samples} samples over ${length}; greatest force ${maximum}.`,
  empty: 'Nothing was recorded.',
  parted: 'Its readings show that the piece has parted.',
  goOn: 'Go on recording',
  goOnWords:
    'The piece still stands in the rig. The recording runs on where it stopped; the time without readings is marked as a gap, in the record and on every screen.',
  keep: 'Keep as it is',
  keepWords:
    'It goes into the record as the pull of this piece, as far as it goes, with the break marked. The piece then counts as pulled.',
  putAside: 'Put it aside',
  putAsideWords: 'It stays on disc. The piece counts as not pulled.',
  before: 'Before you go on',
  beforeWords:
    'The chain may still be loaded. Nobody goes to it to look. Recording begins with the press, so go through this first.',
  start: 'Go on recording now',
  starting: 'Going on …',
  back: 'Back',
  keeping: (percent: string) => `Keeping the record: ${percent}`,
  keepingWords: 'Every reading is on disc already; now they are made into a trace, read, and written into the record.',
} as const;
