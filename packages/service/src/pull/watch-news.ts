import type { LiveMessage } from '@provinghouse/contract';
import type { Forecast, Stage, TraceReading, WatchView } from '@provinghouse/core';

/** What is worth a line on a terminal. */
export type WatchNews =
  | { readonly kind: 'practice' }
  /** Once a second of the samples. */
  | {
      readonly kind: 'readings';
      readonly time_s: number;
      readonly force_kN: number;
      readonly maximumSoFar_kN: number | null;
      readonly received: number;
      readonly rejected: number;
    }
  | { readonly kind: 'stage'; readonly time_s: number; readonly force_kN: number; readonly stage: Stage }
  | { readonly kind: 'rule'; readonly time_s: number; readonly name: string; readonly force_kN: number }
  | ({ readonly kind: 'forecast'; readonly time_s: number; readonly force_kN: number } & Forecast)
  | { readonly kind: 'range'; readonly time_s: number; readonly rangeGuard: WatchView['rangeGuard'] }
  | Extract<LiveMessage, { readonly kind: 'trouble' | 'ended' }>
  /** The recording as core/trace reads it. */
  | { readonly kind: 'reading'; readonly file: string; readonly sha256: string; readonly reading: TraceReading };

export interface NewsTeller {
  view(view: WatchView, counts: { readonly received: number; readonly rejected: number }): WatchNews[];
}

const every_s = 1;

/** Turns the views of a pull into news: each change of stage and each rule line once, readings and forecasts once a second of the samples. */
export function newsTeller(): NewsTeller {
  let last: WatchView | null = null;
  let said_s = Number.NEGATIVE_INFINITY;
  return {
    view(view, counts) {
      const news: WatchNews[] = [];
      const { time_s, force_kN, stage, rangeGuard, maximumSoFar_kN } = view;
      for (const passed of view.passed.slice(last?.passed.length ?? 0)) news.push({ kind: 'rule', ...passed });
      if (stage !== last?.stage) news.push({ kind: 'stage', time_s, force_kN, stage });
      if (rangeGuard !== (last?.rangeGuard ?? 'clear')) news.push({ kind: 'range', time_s, rangeGuard });
      if (time_s - said_s >= every_s) {
        said_s = time_s;
        news.push({ kind: 'readings', time_s, force_kN, maximumSoFar_kN, ...counts });
        if (view.forecast) news.push({ kind: 'forecast', time_s, force_kN, ...view.forecast });
      }
      last = view;
      return news;
    },
  };
}
