import type { Row } from '@provinghouse/contract';
import type { BreakPosition, Random } from '@provinghouse/rig/practice';

type Break = Row<'breaks'>;

/** How a break looks to one who reads it rightly, by where it is. */
export function drawMode(position: BreakPosition, random: Random): string {
  if (position === 'weld') return 'weld not fused';
  if (position === 'beside weld') return random.chance(0.7) ? 'fibrous' : 'brittle';
  if (position === 'in grip') return 'shear';
  if (position === 'crown') return random.chance(0.6) ? 'shear' : 'ductile cup-and-cone';
  return random.chance(0.8) ? 'ductile cup-and-cone' : 'fibrous';
}

const notes: Readonly<Record<BreakPosition, string>> = {
  crown: 'shoulder drawn down, inclined dull face; the other links clearly drawn',
  shank: 'plain leg necked, flat dull centre with a slanting rim; the other links clearly drawn',
  weld: 'in the joint plane; smooth dark patch over part of the face, the rest torn',
  'beside weld': 'half a bar diameter from the burr, starts at the trim mark; little necking',
  'in grip': 'at the tooth mark of the upper jaw, inside the jaw',
};

/** What people take a place or a look for when they misread it. */
const likePlace: Readonly<Record<BreakPosition, BreakPosition>> = {
  crown: 'shank',
  shank: 'crown',
  weld: 'beside weld',
  'beside weld': 'weld',
  'in grip': 'in grip',
};
const likeMode: Readonly<Record<string, string>> = {
  'weld not fused': 'brittle',
  fibrous: 'ductile cup-and-cone',
  brittle: 'weld not fused',
  shear: 'fibrous',
  'ductile cup-and-cone': 'shear',
};

export interface BrokenPiece {
  readonly pull: string;
  readonly link: number;
  readonly position: BreakPosition;
  readonly mode: string;
  /** Whether the second reader saw this break too. */
  readonly readTwice: boolean;
}

/** Readings of one break: the first reader is right, the second, who does not know the supplier, now and then differs. */
export function examineBreak(broken: BrokenPiece, random: Random): Break[] {
  const { pull, link, position, mode } = broken;
  const first: Break = { pull, link, examiner: 'plover', position, mode, note: notes[position] };
  if (!broken.readTwice) return [first];
  const second: Break = {
    pull,
    link,
    examiner: 'teal',
    position: random.chance(0.1) ? likePlace[position] : position,
    mode: random.chance(0.2) ? (likeMode[mode] ?? mode) : mode,
    note: null,
  };
  return [first, second];
}
