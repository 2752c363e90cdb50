export type {
  Forecast,
  RuleLine,
  Stage,
  WatchEnd,
  WatchOptions,
  WatchSample,
  WatchState,
  WatchView,
} from './state.ts';
export { viewOf } from './view.ts';
export { operatorStop, startWatch, step, tick } from './watch.ts';
