import type { WatchSample } from '@provinghouse/core';
import { seededNormal, seededRandom } from '../packages/core/test/trace/pull-simulator.ts';
import type { KnownPull } from './watch-pulls.ts';

/** Plastic part of a curve: resistance over its greatest, after plastic travel u, where 1 is about the uniform elongation. */
type Hardening = (u: number) => number;

interface Draw {
  readonly between: (low: number, high: number) => number;
  readonly chance: (share: number) => boolean;
}

/** Reaches its greatest value at u = 1 and softens after. */
function bounded({ between }: Draw, knee: number): Hardening {
  const power = between(1.3, 2.6);
  const softening = between(0.05, 0.6);
  return (u) => (u < 1 ? knee + (1 - knee) * (1 - (1 - u) ** power) : 1 - softening * (u - 1) ** 2);
}

/** Saturates (Voce 1948), with the loss of section taken off, so that a maximum comes (Considere 1885). */
function saturating({ between }: Draw, knee: number): Hardening {
  const pace = between(2, 7);
  const loss = between(0.01, 0.06);
  const raw = (u: number): number => (knee + (1 - knee) * (1 - Math.exp(-pace * u))) * (1 - loss * u * u);
  const top = Array.from({ length: 300 }, (_, i) => raw(i / 100)).reduce((a, b) => Math.max(a, b));
  return (u) => raw(u) / top;
}

/** Never flattens (Hollomon 1945); 1 at u = 1 only by scale. */
function powerLaw({ between }: Draw, knee: number): Hardening {
  const power = between(0.15, 0.7);
  return (u) => knee + (1 - knee) * u ** power;
}

/** Where the piece gives way: after the top, about it, or early by a fault. As plastic travel u. */
function partingTravel({ between, chance }: Draw, law: Hardening): number {
  const weakness = chance(0.35) ? between(0.84, 0.99) : between(0.97, 1.02);
  for (let u = 0; u < 1.6; u += 0.002) if (law(u) >= weakness) return u;
  return between(1, 1.5);
}

/**
 * Pulls of many shapes that are not the practice rig's: knee at 0.4 to 0.95 of the greatest force, hardening that ends, saturates or goes on for
 * ever, sharp and round knees, weak places. The forecast is tuned on these and on practice pulls alike, so that it does not take one simulator's
 * curve for a law of nature.
 */
export function shapePull(seed: number): KnownPull {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const draw: Draw = { between, chance: (share) => random() < share };
  const knee = between(0.4, 0.95);
  const kind = random();
  const law = (kind < 0.4 ? bounded : kind < 0.75 ? saturating : powerLaw)(draw, knee);
  const top_kN = 10 ** between(0.7, 2.7);
  const elastic_mm = between(0.5, 4);
  const plastic_mm = elastic_mm * 10 ** between(0.2, 1.3);
  const rounding = between(0.01, 0.15);
  const bedding_mm = elastic_mm * between(0.1, 1.2);
  const bedded = between(0.02, 0.06);
  const last = Math.max(0.02, partingTravel(draw, law));
  const speed_mm_per_s = (elastic_mm + plastic_mm) / between(30, 120);
  const rate_Hz = [10, 25, 50, 100][Math.floor(random() * 4)] ?? 50;
  // Course by plastic travel: force, then the travel that elastic stretch, bedding and plastic flow take together.
  const travel: number[] = [];
  const force: number[] = [];
  const add = (share: number, u: number): void => {
    force.push(share);
    travel.push(share * elastic_mm + bedding_mm * (1 - Math.exp(-share / bedded)) + u * plastic_mm);
  };
  const start = Math.max(0, law(0) - between(0.05, 0.3) * knee);
  for (let share = 0; share < start; share += 0.002) add(share, 0);
  for (let u = 0; u <= last; u += last / 4000) {
    const round = Math.exp(-u / (rounding * Math.max(0.05, last)));
    add(law(u) - (law(0) - start) * round, u);
  }
  return record(
    { travel, force, top_kN, speed_mm_per_s, rate_Hz, slack_mm: between(0.5, 4), noise: 10 ** between(-4, -2.7) },
    seed,
  );
}

interface Course {
  readonly travel: readonly number[];
  readonly force: readonly number[];
  readonly top_kN: number;
  readonly speed_mm_per_s: number;
  readonly rate_Hz: number;
  readonly slack_mm: number;
  readonly noise: number;
}

function record(course: Course, seed: number): KnownPull {
  const normal = seededNormal(seed + 1);
  const { travel, force, top_kN, speed_mm_per_s, rate_Hz, slack_mm, noise } = course;
  const end = travel.at(-1) ?? 0;
  const samples: WatchSample[] = [];
  let at = 0;
  let maximum_kN = 0;
  let timeOfMaximum_s = 0;
  const parting_s = (slack_mm + end) / speed_mm_per_s;
  for (let i = 0; i / rate_Hz < parting_s + 2; i++) {
    const time_s = i / rate_Hz;
    const x = Math.min(time_s, parting_s + 0.5) * speed_mm_per_s - slack_mm;
    while (at < travel.length - 2 && (travel[at + 1] ?? end) < x) at++;
    const x0 = travel[at] ?? 0;
    const x1 = travel[at + 1] ?? x0;
    const f0 = force[at] ?? 0;
    const share =
      x <= 0 || x > end
        ? 0
        : f0 + ((force[at + 1] ?? f0) - f0) * Math.min(1, Math.max(0, (x - x0) / Math.max(1e-12, x1 - x0)));
    const pure = share * top_kN;
    if (pure > maximum_kN) {
      maximum_kN = pure;
      timeOfMaximum_s = time_s;
    }
    samples.push({
      time_s,
      force_kN: pure + noise * top_kN * normal(),
      table_mm: x + slack_mm + 0.003 * normal(),
      extension_mm: null,
    });
  }
  return { name: `shape ${seed}`, rate_Hz, samples, maximum_kN, timeOfMaximum_s, timeOfParting_s: parting_s };
}
