import { type BreakPosition, bulkResistance_kN, type Link, type WeakZone } from './chain-link.ts';
import type { Table } from './hydraulic-rig.ts';

/** A sudden lengthening: a link turning into its seat, a jaw that slips, a weld that opens part of the way. */
export interface Jump {
  readonly kind: 'seating' | 'grip slip' | 'weld opening';
  readonly at_kN: number;
  readonly by_mm: number;
}

export interface Chain {
  readonly links: readonly Link[];
  /** What would give way at the grip; null where the grip is sound. */
  readonly gripZone: WeakZone | null;
  readonly slack_mm: number;
  /** Travel used up while contacts between links bed in, and the force scale over which they do. */
  readonly bedding_mm: number;
  readonly bedding_kN: number;
  readonly compliance_mm_per_kN: number;
  readonly jumps: readonly Jump[];
}

/** What truly happened, step by step, before any transducer saw it. */
export interface PullHistory {
  readonly step_s: number;
  readonly force_kN: Float64Array;
  readonly table_mm: Float64Array;
  /** Over the free links: table travel less what frame and grips took. */
  readonly extension_mm: Float64Array;
  readonly partedStep: number;
  /** Link counted from the fixed end; 0 for the grip. */
  readonly partedLink: number;
  readonly position: BreakPosition;
  readonly maximumStep: number;
  /** Plastic and elastic extension of the free links at parting over the sum of their pitches, %. */
  readonly elongation_pct: number;
  readonly stiffness_kN_per_mm: number;
  readonly jumps: readonly { readonly kind: Jump['kind']; readonly time_s: number; readonly force_kN: number }[];
}

const step_s = 0.01;
const longest_s = 240;
/** Flow rate goes with (force / resistance)^120, so a tenfold change of speed moves the force by about 2 %. */
const rateExponent = 120;
const referenceStrainRate_per_s = 0.004;
const referenceZoneRate_mm_per_s = 0.2;

/** Pulls a chain to destruction: links in series, one force in all, table travel given. */
export function pullChain(chain: Chain, table: Table, after_s: number): PullHistory {
  const pull = startPull(chain);
  const steps = Math.round(longest_s / step_s);
  for (let i = 0; i < steps; i++) {
    const time_s = i * step_s;
    const travel_mm = table.advance(time_s, step_s, pull.force_kN);
    advanceChain(pull, travel_mm, time_s);
    pull.history.force.push(pull.force_kN);
    pull.history.table.push(travel_mm);
    pull.history.extension.push(travel_mm - chain.compliance_mm_per_kN * pull.force_kN - pull.gripSlip_mm);
    if (pull.parted) return finish(pull, table, i, after_s);
  }
  throw new Error(`the chain did not part within ${longest_s} s; the story asks for too strong a chain`);
}

interface Zone {
  readonly link: number;
  readonly zone: WeakZone;
  drawn_mm: number;
}

interface Pull {
  readonly chain: Chain;
  readonly strain: number[];
  readonly zones: readonly Zone[];
  readonly pending: Jump[];
  readonly happened: { kind: Jump['kind']; time_s: number; force_kN: number }[];
  readonly elastic_mm_per_kN: number;
  force_kN: number;
  jumped_mm: number;
  gripSlip_mm: number;
  parted: Zone | null;
  readonly history: { force: number[]; table: number[]; extension: number[] };
}

function startPull(chain: Chain): Pull {
  const zones: Zone[] = chain.links.map((link, i) => ({ link: i + 1, zone: link.zone, drawn_mm: 0 }));
  if (chain.gripZone) zones.push({ link: 0, zone: chain.gripZone, drawn_mm: 0 });
  const links = chain.links.reduce((sum, link) => sum + 1 / link.stiffness_kN_per_mm, 0);
  return {
    chain,
    zones,
    strain: chain.links.map(() => 0),
    pending: [...chain.jumps].sort((a, b) => a.at_kN - b.at_kN),
    happened: [],
    elastic_mm_per_kN: links + chain.compliance_mm_per_kN,
    force_kN: 0,
    jumped_mm: 0,
    gripSlip_mm: 0,
    parted: null,
    history: { force: [], table: [], extension: [] },
  };
}

function advanceChain(pull: Pull, travel_mm: number, time_s: number): void {
  const jump = pull.pending[0];
  if (jump && pull.force_kN >= jump.at_kN) {
    pull.pending.shift();
    pull.jumped_mm += jump.by_mm;
    if (jump.kind === 'grip slip') pull.gripSlip_mm += jump.by_mm;
    pull.happened.push({ kind: jump.kind, time_s, force_kN: pull.force_kN });
  }
  const flows = flowsOf(pull);
  const offered_mm = travel_mm - pull.chain.slack_mm - pull.jumped_mm - flows.reduce((sum, f) => sum + f.drawn_mm, 0);
  pull.force_kN = offered_mm <= 0 ? 0 : balance(pull, flows, offered_mm);
  for (const flow of flows) flow.keep(step_s * flow.rate_mm_per_s * powerOf(pull.force_kN / flow.resistance_kN));
  pull.parted = pull.zones.find((z) => z.drawn_mm >= z.zone.travel_mm) ?? null;
}

/** Something that flows when pulled: the bulk of a link, or its weak zone. */
interface Flow {
  readonly resistance_kN: number;
  readonly rate_mm_per_s: number;
  readonly drawn_mm: number;
  readonly keep: (more_mm: number) => void;
}

function flowsOf(pull: Pull): Flow[] {
  const bulk = pull.chain.links.map((link, i): Flow => {
    const strain = pull.strain[i] ?? 0;
    return {
      resistance_kN: bulkResistance_kN(link, strain),
      rate_mm_per_s: referenceStrainRate_per_s * link.pitch_mm,
      drawn_mm: strain * link.pitch_mm,
      keep: (more_mm) => {
        pull.strain[i] = strain + more_mm / link.pitch_mm;
      },
    };
  });
  const zones = pull.zones.map((z): Flow => {
    const share = Math.min(1, z.drawn_mm / z.zone.travel_mm);
    return {
      resistance_kN: z.zone.strength_kN * (1 - z.zone.softening * share ** 1.5),
      rate_mm_per_s: referenceZoneRate_mm_per_s,
      drawn_mm: z.drawn_mm,
      keep: (more_mm) => {
        z.drawn_mm += more_mm;
      },
    };
  });
  return [...bulk, ...zones];
}

function powerOf(ratio: number): number {
  return ratio < 0.7 ? 0 : Math.exp(rateExponent * Math.log(ratio));
}

/** The one force at which elastic stretch, bedding and this step's flow use up the travel offered (implicit Euler). */
function balance(pull: Pull, flows: readonly Flow[], offered_mm: number): number {
  const { bedding_mm, bedding_kN } = pull.chain;
  let low = 0;
  let high = offered_mm / pull.elastic_mm_per_kN;
  let force = Math.min(Math.max(pull.force_kN, high * 1e-6), high);
  for (let i = 0; i < 120 && high - low > 1e-9; i++) {
    const bedded = Math.exp(-force / bedding_kN);
    let excess = force * pull.elastic_mm_per_kN + bedding_mm * (1 - bedded) - offered_mm;
    let slope = pull.elastic_mm_per_kN + (bedding_mm / bedding_kN) * bedded;
    for (const flow of flows) {
      const flowed = step_s * flow.rate_mm_per_s * powerOf(force / flow.resistance_kN);
      excess += flowed;
      slope += (rateExponent * flowed) / force;
    }
    if (excess > 0) high = force;
    else low = force;
    if (Math.abs(excess) < 1e-10) break;
    // Newton alone creeps along the steep side of a power of 120, so every other step halves the bracket.
    const newton = force - excess / slope;
    force = i % 2 === 0 && newton > low && newton < high ? newton : (low + high) / 2;
  }
  return force;
}

/** Runs the table on for a moment after parting, as hands need time to close a valve. */
function finish(pull: Pull, table: Table, partedStep: number, after_s: number): PullHistory {
  const { history, chain, parted } = pull;
  const last = history.extension[partedStep] ?? 0;
  for (let i = 1; i <= Math.round(after_s / step_s); i++) {
    const since_s = i * step_s;
    const running = table.advance((partedStep + i) * step_s, step_s, 0);
    history.table.push(since_s < 0.8 ? running : (history.table.at(-1) ?? running));
    history.force.push(ringing(history.force[partedStep] ?? 0, since_s));
    history.extension.push(last - 0.9 + 1.6 * Math.exp(-since_s / 0.15) * Math.cos(2 * Math.PI * 5 * since_s));
  }
  const gauge_mm = chain.links.reduce((sum, link) => sum + link.pitch_mm, 0);
  const links_mm_per_kN = pull.elastic_mm_per_kN - chain.compliance_mm_per_kN;
  const plastic_mm =
    chain.links.reduce((sum, link, i) => sum + (pull.strain[i] ?? 0) * link.pitch_mm, 0) +
    pull.zones.reduce((sum, z) => sum + (z.link > 0 ? z.drawn_mm : 0), 0);
  const partingForce = history.force[partedStep] ?? 0;
  return {
    step_s,
    force_kN: Float64Array.from(history.force),
    table_mm: Float64Array.from(history.table),
    extension_mm: Float64Array.from(history.extension),
    partedStep,
    partedLink: parted?.link ?? 0,
    position: parted?.zone.position ?? 'in grip',
    maximumStep: history.force.reduce((best, f, i) => (f > (history.force[best] ?? 0) ? i : best), 0),
    elongation_pct: (100 * (plastic_mm + partingForce * links_mm_per_kN)) / gauge_mm,
    stiffness_kN_per_mm: 1 / links_mm_per_kN,
    jumps: pull.happened,
  };
}

/** The frame rings for a few tenths of a second once the chain has gone. */
function ringing(before_kN: number, since_s: number): number {
  return 0.05 * before_kN * Math.exp(-since_s / 0.07) * Math.cos(2 * Math.PI * 13 * since_s);
}
