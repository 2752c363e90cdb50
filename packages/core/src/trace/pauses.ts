import { medianOf } from './order-statistic.ts';
import type { TraceEvent } from './reading.ts';
import type { WindowRate } from './window-rates.ts';
import { windowRates } from './window-rates.ts';

export interface PauseInput {
  readonly force_kN: Float64Array;
  readonly time_s: Float64Array;
  readonly table_mm: Float64Array | null;
  readonly from: number;
  readonly to: number;
  readonly noise_kN: number;
  readonly maximum_kN: number;
}

const WINDOW_S = 0.5;
const LEAST_PAUSE_S = 2;
const STILL_SHARE = 0.1;

/** Windows in which the machine stood still: by the table when there is one, else by the force, well below the maximum. */
function stillWindows(input: PauseInput): readonly WindowRate[] {
  const { force_kN, time_s, table_mm, from, to } = input;
  const span = { from, to, width_s: WINDOW_S };
  const rates = windowRates(table_mm ?? force_kN, time_s, span);
  const rising = rates.filter((rate) => rate.perSecond > 0);
  const usual = medianOf(Float64Array.from(rising, (rate) => rate.perSecond));
  const uncertain = table_mm ? 0 : (3 * input.noise_kN) / WINDOW_S;
  if (!(usual > 0) || uncertain > STILL_SHARE * usual) return [];
  return rates.filter((rate) => {
    const force = force_kN[rate.to] as number;
    const counts = table_mm === null ? force < 0.9 * input.maximum_kN : force > 0.05 * input.maximum_kN;
    return counts && Math.abs(rate.perSecond) < STILL_SHARE * usual;
  });
}

/**
 * Pauses: two seconds or more in which the table (without one, the force below 90 % of the maximum) moves at under a tenth of its usual
 * rate. Without a table no pause is claimed in a record too noisy to show it. Common practice.
 */
export function findPauses(input: PauseInput): TraceEvent[] {
  const pauses: TraceEvent[] = [];
  let open: { from: number; to: number } | null = null;
  const close = (): void => {
    if (!open) return;
    const seconds = (input.time_s[open.to] as number) - (input.time_s[open.from] as number);
    if (seconds >= LEAST_PAUSE_S) {
      const force_kN = input.force_kN[open.from] as number;
      pauses.push({
        kind: 'pause',
        time_s: input.time_s[open.from] as number,
        force_kN,
        drop_kN: null,
        regained: null,
      });
    }
  };
  for (const window of stillWindows(input)) {
    if (open && window.from === open.to) open.to = window.to;
    else {
      close();
      open = { from: window.from, to: window.to };
    }
  }
  close();
  return pauses;
}
