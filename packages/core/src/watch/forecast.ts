import { blockBack } from './block.ts';
import { type RiseBounds, riseBounds } from './forecast-bounds.ts';
import { forecastFeatures } from './forecast-features.ts';
import type { RiseQuantiles } from './forecast-quantiles.ts';
import { settle, settledQuantiles } from './forecast-settling.ts';
import type { ForecastAxis } from './forecast-tables.ts';
import { blockNoise_kN } from './load-level.ts';
import type { WatchMemory } from './memory.ts';
import type { Forecast } from './state.ts';

/** Rise to the maximum, as ln(maximum / greatest force so far). */
interface Rise extends RiseBounds {
  readonly middle: number;
}

/** Blocks without features, or with bounds too far apart, after which the forecast is withdrawn. */
const PATIENCE = 10;
/** Noises of a block by which the greatest block may lie too high. */
const NOISES = 2;
/** Bounds further apart than this share of the middle mean nothing. */
const WIDEST = 0.6;

/** The middle with its bounds; null where they lie too far apart to mean anything. */
function riseFor(axis: ForecastAxis, quantiles: RiseQuantiles): Rise | null {
  const { lower, upper } = riseBounds(axis, quantiles);
  const middle = Math.min(upper, Math.max(lower, quantiles.middle));
  return Math.exp(upper - middle) - Math.exp(lower - middle) <= WIDEST ? { lower, middle, upper } : null;
}

function timeTo(memory: WatchMemory, maximum_kN: number): number | null {
  const rate = memory.rate_kN_per_s ?? 0;
  return rate > 0 ? (maximum_kN - memory.lastBlock_kN) / rate : null;
}

/** What was reached for certain: the greatest block so far owes some of its force to noise. */
function reached_kN(memory: WatchMemory): number {
  const readings = blockBack(memory.blocks, 0)?.readings ?? 1;
  return memory.envelope_kN - NOISES * blockNoise_kN(memory, readings);
}

/** A forecast stands for a while: its bounds kept above what was reached. */
function kept(memory: WatchMemory, forecast: Forecast): Forecast {
  const maximum_kN = Math.max(memory.envelope_kN, forecast.maximum_kN);
  return {
    maximum_kN,
    lower90_kN: Math.max(reached_kN(memory), forecast.lower90_kN),
    upper90_kN: Math.max(memory.envelope_kN, forecast.upper90_kN),
    timeToMaximum_s: timeTo(memory, maximum_kN),
  };
}

function forecastBy(memory: WatchMemory, rise: Rise): Forecast {
  const { zero_kN, envelope_kN } = memory;
  const force = (log: number): number => Math.max(envelope_kN, zero_kN + (envelope_kN - zero_kN) * Math.exp(log));
  const maximum_kN = force(rise.middle);
  return {
    maximum_kN,
    lower90_kN: rise.lower > 0 ? force(rise.lower) : reached_kN(memory),
    upper90_kN: force(rise.upper),
    timeToMaximum_s: timeTo(memory, maximum_kN),
  };
}

/**
 * Forecast of the maximum, at a closed block. Eleven pure numbers of the curve so far give three quantiles of the rise that is left (forecast-quantiles.ts), and
 * these the bounds that hold a rise of any size nine times in ten (forecast-bounds.ts), on simulated pulls of many shapes
 * (docs/reference/live-watch.md). Null before the knee, after the maximum, and where the bounds lie too far apart to mean
 * anything. While the table hesitates or a dip is regained, the last forecast stands.
 */
export function forecastOf(memory: WatchMemory, dt_s: number): Forecast | null {
  const { stage, forecast } = memory;
  if ((stage !== 'plastic' && stage !== 'near maximum') || memory.loss) {
    memory.expected = null;
    return null;
  }
  if (memory.tangent === null) return forecast && kept(memory, forecast);
  const features = forecastFeatures(memory);
  if (features) settle(memory, features, dt_s);
  const quantiles = features && settledQuantiles(memory);
  const rise = quantiles && riseFor(memory.axis, quantiles);
  memory.unforecast = rise ? 0 : memory.unforecast + 1;
  if (rise) return forecastBy(memory, rise);
  return forecast && memory.unforecast < PATIENCE ? kept(memory, forecast) : null;
}
