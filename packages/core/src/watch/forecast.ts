import { forecastFeatures } from './forecast-features.ts';
import type { WatchMemory } from './memory.ts';
import type { Forecast } from './state.ts';
import table from './tables/forecast.json' with { type: 'json' };

/** Quantiles of ln(maximum / greatest force so far) that came true; null where they lay too far apart to mean anything. */
interface Rise {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** The forecast settles over this time, so that a step from one row of the table to the next is no jump on the screen. */
const SETTLES_S = 1.5;
/** Blocks without a meaningful row after which the forecast is withdrawn. */
const PATIENCE = 10;

function riseFor(features: readonly number[]): Rise | null {
  let at = 0;
  for (;;) {
    const node = table.nodes[at];
    if (!node) return null;
    if (node.feature === undefined || node.limit === undefined) return node.rise ?? null;
    at = (features[node.feature] ?? 0) <= node.limit ? (node.below ?? 0) : (node.above ?? 0);
  }
}

/** Bounds kept above what was reached, and the time at the rate of now. */
function kept(memory: WatchMemory, forecast: Omit<Forecast, 'timeToMaximum_s'>): Forecast {
  const reached = memory.envelope_kN;
  const rate = memory.rate_kN_per_s ?? 0;
  const maximum_kN = Math.max(reached, forecast.maximum_kN);
  return {
    maximum_kN,
    lower90_kN: Math.max(reached, forecast.lower90_kN),
    upper90_kN: Math.max(reached, forecast.upper90_kN),
    timeToMaximum_s: rate > 0 ? (maximum_kN - memory.lastBlock_kN) / rate : null,
  };
}

function settled(memory: WatchMemory, rise: Rise, dt_s: number): Forecast {
  const { forecast, zero_kN, envelope_kN } = memory;
  const share = Math.min(1, dt_s / SETTLES_S);
  const blend = (log: number, before: number | undefined): number => {
    const now = zero_kN + (envelope_kN - zero_kN) * Math.exp(log);
    return before === undefined ? now : before + share * (now - before);
  };
  return kept(memory, {
    maximum_kN: blend(rise.middle, forecast?.maximum_kN),
    lower90_kN: blend(rise.low, forecast?.lower90_kN),
    upper90_kN: blend(rise.high, forecast?.upper90_kN),
  });
}

/**
 * Forecast of the maximum, at a closed block. Nine pure numbers of the curve so far lead through a fixed tree (tables/forecast.json) to a row that says how
 * far above the force so far the maximum came, as 5 %, 50 % and 95 % quantile, on simulated pulls of many shapes
 * (docs/reference/live-watch.md). Null before the knee, after the maximum, without a table, and where the quantiles lay too far apart to mean
 * anything. While the table hesitates or a dip is regained, the last forecast stands.
 */
export function forecastOf(memory: WatchMemory, dt_s: number): Forecast | null {
  const { stage, forecast } = memory;
  if ((stage !== 'plastic' && stage !== 'near maximum') || memory.loss) return null;
  if (memory.tangent === null) return forecast && kept(memory, forecast);
  const features = forecastFeatures(memory);
  const rise = features && riseFor(features);
  memory.unforecast = rise ? 0 : memory.unforecast + 1;
  if (rise) return settled(memory, rise, dt_s);
  return forecast && memory.unforecast < PATIENCE ? kept(memory, forecast) : null;
}
