import {
  type Chain,
  drawLink,
  type Eased,
  hydraulicTable,
  type Jump,
  type Link,
  type Random,
  scriptedHand,
  stream,
  type Transducer,
  type WeakZone,
} from '@provinghouse/rig/practice';
import { type PullHistory, pullChain } from './chain-pull.ts';
import { type PieceStory, type Supplier, suppliers } from './suppliers.ts';
import { type Recording, record, type Spike } from './transducer.ts';

/** Everything drawn in the demonstration hangs on this one number. */
export const demoSeed = 1;

/** A piece as it truly is and how its pull truly went, with what the recorder kept of it. */
export interface PulledPiece {
  readonly piece: string;
  readonly sample: string;
  readonly supplier: Supplier;
  readonly story: PieceStory;
  readonly rig: 'RIG-1' | 'RIG-2';
  readonly links: readonly Link[];
  readonly history: PullHistory;
  readonly transducer: Transducer;
  readonly spikes: readonly Spike[];
  readonly pauses: readonly Eased[];
  readonly recording: Recording;
}

const linksPerPiece = 5;
/** The first three pieces come from the first length bought, the others from the second. */
const piecesFromFirstLength = 3;

const rigs = {
  'RIG-1': { compliance_mm_per_kN: 0.011, gainError: 0.002, noise_kN: 0.012, rangeMaximum_kN: 100 },
  'RIG-2': { compliance_mm_per_kN: 0.016, gainError: -0.003, noise_kN: 0.018, rangeMaximum_kN: 70 },
} as const;

/** Draws and pulls all thirty pieces, in the order of the suppliers' list. */
export function pullAllPieces(seed: number): PulledPiece[] {
  return suppliers.flatMap((supplier) => supplier.pieces.map((story, i) => pullPiece(seed, supplier, story, i + 1)));
}

function pullPiece(seed: number, supplier: Supplier, story: PieceStory, number: number): PulledPiece {
  const piece = `${supplier.product}-${number}`;
  const random = stream(seed, `${piece}/pull`);
  const rig = story.rig ?? 'RIG-1';
  const links = drawLinks(supplier, story, stream(seed, `${piece}/links`));
  const gripZone = gripZoneOf(links, story);
  const strength_kN = Math.min(...links.map((link) => link.zone.strength_kN), gripZone?.strength_kN ?? Infinity);
  const chain = drawChain({ links, gripZone, story, strength_kN, rig, random });
  const tableRandom = stream(seed, `${piece}/table`);
  const hand = scriptedHand(handOnValve(supplier, story, strength_kN, random), tableRandom);
  const table = hydraulicTable(hand, tableRandom, { sag_per_kN: 0.0012, wander: 0.03, damping: null });
  const history = pullChain(chain, table, random.between(1.6, 3));
  const { gainError, noise_kN, rangeMaximum_kN } = rigs[rig];
  const transducer: Transducer = {
    gainError,
    noise_kN,
    rangeMaximum_kN,
    zero_kN: random.between(0.03, 0.16) * (random.chance(0.3) ? -1 : 1),
    zeroDrift_kN_per_s: random.normal(0, 0.0001),
  };
  const spikes = spikesOf(story, history);
  const maximum_kN = history.force_kN[history.maximumStep] ?? 0;
  const stopsAt_kN = story.stopsAt === undefined ? null : story.stopsAt * maximum_kN;
  const recording = record(
    history,
    { transducer, spikes, stopsAt_kN, sampleRate_Hz: story.rate_Hz },
    stream(seed, `${piece}/noise`),
  );
  const sample = `${supplier.product}-S${number <= piecesFromFirstLength ? 1 : 2}`;
  return { piece, sample, supplier, story, rig, links, history, transducer, spikes, pauses: hand.eased, recording };
}

function drawLinks(supplier: Supplier, story: PieceStory, random: Random): Link[] {
  const making = {
    ...supplier.making,
    uniformElongation: supplier.making.uniformElongation * (story.ductility ?? 1),
  };
  const links = Array.from({ length: linksPerPiece }, () => drawLink(making, story.level, random));
  return links.map((link, i) => (i === 2 ? oddLink(link, story) : link));
}

/** The middle link may have been made out of limits on purpose. */
function oddLink(link: Link, story: PieceStory): Link {
  return {
    ...link,
    pitch_mm: story.pitchOfLink3_mm ?? link.pitch_mm,
    weldDiameter_mm: story.weldOfLink3_mm ?? link.weldDiameter_mm,
  };
}

function gripZoneOf(links: readonly Link[], story: PieceStory): WeakZone | null {
  if (story.gripStrength === undefined) return null;
  const least_kN = Math.min(...links.map((link) => link.zone.strength_kN));
  return { position: 'in grip', strength_kN: least_kN * story.gripStrength, travel_mm: 0.25, softening: 0.02 };
}

interface ChainDraw {
  readonly links: readonly Link[];
  readonly gripZone: WeakZone | null;
  readonly story: PieceStory;
  readonly strength_kN: number;
  readonly rig: 'RIG-1' | 'RIG-2';
  readonly random: Random;
}

function drawChain({ links, gripZone, story, strength_kN, rig, random }: ChainDraw): Chain {
  const seatings = Array.from({ length: random.chance(0.5) ? 2 : 1 }, (): Jump => {
    return { kind: 'seating', at_kN: strength_kN * random.between(0.04, 0.2), by_mm: random.between(0.015, 0.045) };
  });
  const told = (story.jumps ?? []).map(({ kind, share, by_mm }): Jump => ({ kind, at_kN: share * strength_kN, by_mm }));
  return {
    links,
    gripZone,
    slack_mm: random.between(1.5, 4),
    bedding_mm: random.between(1.1, 1.7),
    bedding_kN: 0.045 * strength_kN,
    compliance_mm_per_kN: rigs[rig].compliance_mm_per_kN,
    jumps: [...seatings, ...told],
  };
}

function handOnValve(supplier: Supplier, story: PieceStory, strength_kN: number, random: Random) {
  const main = supplier.size_mm === 8 ? 0.5 : 0.62;
  return {
    approach_mm_per_s: 0.9,
    takeUp_mm_per_s: random.between(0.22, 0.28),
    main_mm_per_s: main * random.between(0.92, 1.08),
    openFrom_kN: strength_kN * random.between(0.56, 0.62),
    idle_s: random.between(1.2, 2.5),
    hesitations: (story.pauses ?? []).map(({ share, lasts_s, keeps }) => ({
      from_kN: share * strength_kN,
      lasts_s,
      keeps,
    })),
  };
}

function spikesOf(story: PieceStory, history: PullHistory): Spike[] {
  const maximum_kN = history.force_kN[history.maximumStep] ?? 0;
  const duration_s = history.partedStep * history.step_s;
  return (story.spikes ?? []).map(({ when, share }) => ({
    time_s: Math.round(when * duration_s * story.rate_Hz) / story.rate_Hz,
    force_kN: share * maximum_kN,
  }));
}
