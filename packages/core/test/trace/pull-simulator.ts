import type { TraceSignals } from '../../src/trace/index.ts';

/** Even random numbers in (0, 1) from a seed: mulberry32, public domain. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}

/** Standard normal numbers from a seed (Box and Muller). */
export function seededNormal(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

/** An invented chain in an invented rig. */
export interface PullPlan {
  readonly rate_Hz?: number;
  readonly speed_mm_per_s?: number;
  readonly slack_mm?: number;
  readonly stiffness_kN_per_mm?: number;
  /** Force at which the plastic part is as large as the elastic one. */
  readonly yield_kN?: number;
  readonly parting_mm?: number;
  /** Travel past which the force declines softly; none when left out. */
  readonly softening_mm?: number;
  /** Seating dips: at this travel the force falls by this much and is regained at the elastic rate. */
  readonly dips?: readonly { readonly at_mm: number; readonly drop_kN: number }[];
  /** Duration of the fall at parting. */
  readonly fall_s?: number;
  /** Stops this long before parting. */
  readonly stopBefore_s?: number;
  readonly zero_kN?: number;
  readonly after_s?: number;
}

export interface SimulatedPull {
  readonly signals: TraceSignals;
  readonly maximum_kN: number;
  readonly parting_s: number;
  readonly stiffness_kN_per_mm: number;
}

const TOE_MM = 1;

/** Force on the virgin curve at travel x past slack: take-up parabola, then elastic and power-law plastic travel added (Ramberg and Osgood 1943). */
function envelope(x: number, stiffness: number, yield_kN: number): number {
  if (x <= 0) return 0;
  if (x < TOE_MM) return (stiffness * x * x) / (2 * TOE_MM);
  const effective = x - TOE_MM / 2;
  let low = 0;
  let high = stiffness * effective;
  for (let i = 0; i < 45; i++) {
    const force = (low + high) / 2;
    const travel = force / stiffness + (yield_kN / stiffness) * (force / yield_kN) ** 9;
    if (travel > effective) high = force;
    else low = force;
  }
  return (low + high) / 2;
}

/** Simulates one pull at constant table speed, without noise. */
export function simulatePull(plan: PullPlan = {}): SimulatedPull {
  const {
    rate_Hz = 1000,
    speed_mm_per_s = 0.5,
    slack_mm = 6,
    stiffness_kN_per_mm = 5,
    yield_kN = 22,
    parting_mm = 24,
  } = plan;
  const {
    softening_mm = Number.POSITIVE_INFINITY,
    dips = [],
    fall_s = 0.01,
    zero_kN = 0,
    after_s = 1,
    stopBefore_s,
  } = plan;
  const parting_s = (slack_mm + parting_mm) / speed_mm_per_s;
  const end_s = stopBefore_s === undefined ? parting_s + after_s : parting_s - stopBefore_s;
  const count = Math.floor(end_s * rate_Hz) + 1;
  const time = Float64Array.from({ length: count }, (_, i) => i / rate_Hz);
  const table = time.map((t) => Math.min(t, parting_s) * speed_mm_per_s);
  const knots = dips.map((dip) => ({ ...dip, level: envelope(dip.at_mm, stiffness_kN_per_mm, yield_kN) }));
  const forceAt = (t: number): number => {
    const x = Math.min(t, parting_s) * speed_mm_per_s - slack_mm;
    let force = envelope(x, stiffness_kN_per_mm, yield_kN);
    if (x > softening_mm) force *= 1 - 0.004 * (x - softening_mm) ** 2;
    for (const { at_mm, drop_kN, level } of knots) {
      if (x < at_mm) continue;
      const since_s = (x - at_mm) / speed_mm_per_s;
      const fall = drop_kN * Math.min(1, since_s / 0.02);
      force = Math.min(force, level - fall + stiffness_kN_per_mm * (x - at_mm));
    }
    return t <= parting_s ? force : force * Math.max(0, 1 - (t - parting_s) / fall_s);
  };
  const pure = time.map(forceAt);
  const maximum_kN = pure.reduce((a, b) => Math.max(a, b), 0);
  const because = 'simulated';
  const signals: TraceSignals = {
    time_s: time,
    force_kN: pure.map((force) => force + zero_kN),
    table_mm: table,
    extension_mm: null,
    columns: {
      time: { name: 'time', unit: 's', because },
      force: { name: 'force', unit: 'kN', because },
      table: { name: 'table', unit: 'mm', because },
      extension: null,
    },
  };
  return { signals, maximum_kN, parting_s, stiffness_kN_per_mm };
}

/** Every n-th sample. */
export function thinned(signals: TraceSignals, every: number): TraceSignals {
  const take = (values: Float64Array | null): Float64Array | null =>
    values === null ? null : values.filter((_, i) => i % every === 0);
  return {
    ...signals,
    time_s: take(signals.time_s),
    force_kN: signals.force_kN.filter((_, i) => i % every === 0),
    table_mm: take(signals.table_mm),
    extension_mm: take(signals.extension_mm),
  };
}

/** Gaussian noise on the force: `share` of the largest force. */
export function noisy(signals: TraceSignals, share: number, seed: number): TraceSignals {
  const normal = seededNormal(seed);
  const scale = share * signals.force_kN.reduce((a, b) => Math.max(a, b), 0);
  return { ...signals, force_kN: signals.force_kN.map((force) => force + scale * normal()) };
}

/** The force rounded to steps. */
export function stepped(signals: TraceSignals, step_kN: number): TraceSignals {
  const places = Math.ceil(-Math.log10(step_kN));
  return {
    ...signals,
    force_kN: signals.force_kN.map((force) => Number((Math.round(force / step_kN) * step_kN).toFixed(places))),
  };
}
