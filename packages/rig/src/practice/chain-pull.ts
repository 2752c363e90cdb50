import { bulkResistance_kN, type Link, type WeakZone } from './chain-link.ts';

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
  /** Stretch of frame and grips. */
  readonly compliance_mm_per_kN: number;
  readonly jumps: readonly Jump[];
}

export interface JumpThatHappened {
  readonly kind: Jump['kind'];
  readonly time_s: number;
  readonly force_kN: number;
}

/** A zone that may part, with the link it belongs to (counted from the fixed end; 0 for the grip). */
export interface Zone {
  readonly link: number;
  readonly zone: WeakZone;
}

/** A chain in the rig, at one moment of its pull. `advanceChain` moves it on; nothing else writes to it. */
export interface ChainPull {
  readonly chain: Chain;
  readonly step_s: number;
  readonly zones: readonly Zone[];
  readonly elastic_mm_per_kN: number;
  readonly happened: JumpThatHappened[];
  force_kN: number;
  gripSlip_mm: number;
  /** Work lost in flow and jumps so far, J. */
  dissipated_J: number;
  parted: Zone | null;
  readonly inner: Flows;
}

/**
 * Everything that flows when pulled: first the bulk of each link, then each zone. One array a quantity, as a pull asks
 * for them some hundred thousand times.
 */
interface Flows {
  readonly resistance_kN: Float64Array;
  readonly rate_mm_per_s: Float64Array;
  readonly drawn_mm: Float64Array;
  readonly strain: Float64Array;
  readonly zoneDrawn_mm: Float64Array;
  readonly pending: Jump[];
  jumped_mm: number;
}

/** Flow rate goes with (force / resistance)^120, so a tenfold change of speed moves the force by about 2 %. */
const rateExponent = 120;
const referenceStrainRate_per_s = 0.004;
const referenceZoneRate_mm_per_s = 0.2;

/** Hangs a chain in the rig: links in series, one force in all. */
export function startChain(chain: Chain, step_s: number): ChainPull {
  const zones: Zone[] = chain.links.map((link, i) => ({ link: i + 1, zone: link.zone }));
  if (chain.gripZone) zones.push({ link: 0, zone: chain.gripZone });
  const links = chain.links.reduce((sum, link) => sum + 1 / link.stiffness_kN_per_mm, 0);
  const flows = chain.links.length + zones.length;
  return {
    chain,
    step_s,
    zones,
    elastic_mm_per_kN: links + chain.compliance_mm_per_kN,
    happened: [],
    force_kN: 0,
    gripSlip_mm: 0,
    dissipated_J: 0,
    parted: null,
    inner: {
      resistance_kN: new Float64Array(flows),
      rate_mm_per_s: Float64Array.from([
        ...chain.links.map((link) => referenceStrainRate_per_s * link.pitch_mm),
        ...zones.map(() => referenceZoneRate_mm_per_s),
      ]),
      drawn_mm: new Float64Array(flows),
      strain: new Float64Array(chain.links.length),
      zoneDrawn_mm: new Float64Array(zones.length),
      pending: [...chain.jumps].sort((a, b) => a.at_kN - b.at_kN),
      jumped_mm: 0,
    },
  };
}

/** One step with the table at `travel_mm`. A parted chain stays parted and carries nothing. */
export function advanceChain(pull: ChainPull, travel_mm: number, time_s: number): void {
  if (pull.parted) {
    pull.force_kN = 0;
    return;
  }
  const before_kN = pull.force_kN;
  const lost_mm = jump(pull, time_s);
  const drawn_mm = resist(pull);
  const offered_mm = travel_mm - pull.chain.slack_mm - pull.inner.jumped_mm - drawn_mm;
  pull.force_kN = offered_mm <= 0 ? 0 : balance(pull, offered_mm);
  const flowed_mm = flow(pull);
  pull.dissipated_J += 0.5 * (before_kN + pull.force_kN) * (lost_mm + flowed_mm);
  pull.parted = pull.zones.find((z, i) => (pull.inner.zoneDrawn_mm[i] ?? 0) >= z.zone.travel_mm) ?? null;
}

/** Energy held in the stretched frame and links and in the bedded contacts, J. */
export function storedEnergy_J(pull: ChainPull): number {
  const { bedding_mm, bedding_kN } = pull.chain;
  const ratio = pull.force_kN / bedding_kN;
  return (
    0.5 * pull.elastic_mm_per_kN * pull.force_kN ** 2 + bedding_mm * bedding_kN * (1 - Math.exp(-ratio) * (1 + ratio))
  );
}

/** Plastic and elastic extension of the free links over the sum of their pitches, %; bedding and slack left out. */
export function elongation_pct(pull: ChainPull): number {
  const { links, compliance_mm_per_kN } = pull.chain;
  const gauge_mm = links.reduce((sum, link) => sum + link.pitch_mm, 0);
  const plastic_mm =
    links.reduce((sum, link, i) => sum + (pull.inner.strain[i] ?? 0) * link.pitch_mm, 0) +
    pull.zones.reduce((sum, z, i) => sum + (z.link > 0 ? (pull.inner.zoneDrawn_mm[i] ?? 0) : 0), 0);
  return (100 * (plastic_mm + pull.force_kN * (pull.elastic_mm_per_kN - compliance_mm_per_kN))) / gauge_mm;
}

function jump(pull: ChainPull, time_s: number): number {
  const next = pull.inner.pending[0];
  if (!next || pull.force_kN < next.at_kN) return 0;
  pull.inner.pending.shift();
  pull.inner.jumped_mm += next.by_mm;
  if (next.kind === 'grip slip') pull.gripSlip_mm += next.by_mm;
  pull.happened.push({ kind: next.kind, time_s, force_kN: pull.force_kN });
  return next.by_mm;
}

/** Sets resistances and drawn lengths from the strains as they are; gives the sum of the lengths. */
function resist(pull: ChainPull): number {
  const { resistance_kN, drawn_mm, strain, zoneDrawn_mm } = pull.inner;
  const { links } = pull.chain;
  for (const [i, link] of links.entries()) {
    resistance_kN[i] = bulkResistance_kN(link, strain[i] ?? 0);
    drawn_mm[i] = (strain[i] ?? 0) * link.pitch_mm;
  }
  for (const [i, { zone }] of pull.zones.entries()) {
    const drawn = zoneDrawn_mm[i] ?? 0;
    const share = Math.min(1, drawn / zone.travel_mm);
    resistance_kN[links.length + i] = zone.strength_kN * (1 - zone.softening * share ** 1.5);
    drawn_mm[links.length + i] = drawn;
  }
  return drawn_mm.reduce((sum, drawn) => sum + drawn, 0);
}

function flow(pull: ChainPull): number {
  const { resistance_kN, rate_mm_per_s, strain, zoneDrawn_mm } = pull.inner;
  const { links } = pull.chain;
  let flowed_mm = 0;
  for (let i = 0; i < resistance_kN.length; i++) {
    const more = pull.step_s * (rate_mm_per_s[i] ?? 0) * powerOf(pull.force_kN / (resistance_kN[i] ?? 1));
    const link = links[i];
    if (link) strain[i] = (strain[i] ?? 0) + more / link.pitch_mm;
    else zoneDrawn_mm[i - links.length] = (zoneDrawn_mm[i - links.length] ?? 0) + more;
    flowed_mm += more;
  }
  return flowed_mm;
}

function powerOf(ratio: number): number {
  return ratio < 0.7 ? 0 : Math.exp(rateExponent * Math.log(ratio));
}

/** The one force at which elastic stretch, bedding and this step's flow use up the travel offered (implicit Euler). */
function balance(pull: ChainPull, offered_mm: number): number {
  const { bedding_mm, bedding_kN } = pull.chain;
  const { resistance_kN, rate_mm_per_s } = pull.inner;
  let low = 0;
  let high = offered_mm / pull.elastic_mm_per_kN;
  let force = Math.min(Math.max(pull.force_kN, high * 1e-6), high);
  let before = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 120 && high - low > 1e-9; i++) {
    const bedded = Math.exp(-force / bedding_kN);
    let excess = force * pull.elastic_mm_per_kN + bedding_mm * (1 - bedded) - offered_mm;
    let slope = pull.elastic_mm_per_kN + (bedding_mm / bedding_kN) * bedded;
    for (let j = 0; j < resistance_kN.length; j++) {
      const flowed = pull.step_s * (rate_mm_per_s[j] ?? 0) * powerOf(force / (resistance_kN[j] ?? 1));
      excess += flowed;
      slope += (rateExponent * flowed) / force;
    }
    if (excess > 0) high = force;
    else low = force;
    if (Math.abs(excess) < 1e-10) break;
    // Newton creeps along the steep side of a power of 120: where it gains too little the bracket is halved.
    const newton = force - excess / slope;
    const gains = Math.abs(excess) < 0.5 * before;
    before = Math.abs(excess);
    force = gains && newton > low && newton < high ? newton : (low + high) / 2;
  }
  return force;
}
