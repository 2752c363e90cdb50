// Fills the table of distances in the same file: node bench/watch-measure.ts [time], after bench/watch-tune.ts [time] (about five minutes)
import { settledQuantiles } from '../packages/core/src/watch/forecast-settling.ts';
import { distancesOf } from './watch-distances.ts';
import { changeTable, MEASURED, momentsOfAll } from './watch-tuning-pulls.ts';

const moments = momentsOfAll(MEASURED, ({ memory }) => (memory.tangent === null ? null : settledQuantiles(memory)));
changeTable({ distances: distancesOf(moments.map(({ seen, ...moment }) => ({ ...moment, quantiles: seen }))) });
