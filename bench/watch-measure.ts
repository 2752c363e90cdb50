// Fills the table of distances in packages/core/src/watch/tables/forecast.json: node bench/watch-measure.ts, after bench/watch-tune.ts (about five minutes)
import { settledQuantiles } from '../packages/core/src/watch/forecast-settling.ts';
import { distancesOf } from './watch-distances.ts';
import { changeTable, MEASURED, momentsOfAll } from './watch-tuning-pulls.ts';

const moments = momentsOfAll(MEASURED, ({ memory }) => (memory.tangent === null ? null : settledQuantiles(memory)));
changeTable({ distances: distancesOf(moments.map(({ seen, ...moment }) => ({ ...moment, quantiles: seen }))) });
