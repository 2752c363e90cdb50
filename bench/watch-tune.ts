// Grows the models in packages/core/src/watch/tables from simulated pulls: node bench/watch-tune.ts [time] (about five minutes; `time` for pulls without a table).
// Then node bench/watch-measure.ts, which fills the table of distances in the same file.
import { FEATURES, forecastFeatures } from '../packages/core/src/watch/forecast-features.ts';
import { binned, boostQuantile } from './watch-boost.ts';
import { changeTable, GROWN, MEASURED, momentsOfAll } from './watch-tuning-pulls.ts';

const QUANTILES = [0.05, 0.5, 0.95] as const;
const PLAN = { trees: 80, depth: 4, pace: 0.2, leastPulls: 10 };

const moments = momentsOfAll(GROWN, ({ memory }) => forecastFeatures(memory));
const data = binned(
  moments.map(({ seen, ...moment }) => ({ ...moment, features: seen })),
  FEATURES.length,
);
changeTable({
  about:
    'Tuned on simulated pulls only (practice rig, and invented shapes); made by bench/watch-tune.ts and bench/watch-measure.ts, explained in docs/reference/live-watch.md.',
  seeds: { grown: GROWN, measured: MEASURED },
  features: FEATURES,
  quantiles: QUANTILES,
  models: QUANTILES.map((quantile) => boostQuantile(data, { quantile, ...PLAN })),
});
