import type { LiveMessage } from '@provinghouse/contract';
import type { RawReading } from '@provinghouse/rig';

/** Between two readings shown before the start, s. */
const showEvery_s = 0.1;

/** Shows the force before a pull has started, so that the wires and the zero can be looked at. Nothing of it is kept: `received` stays 0. */
export function previewOf(tell: (message: LiveMessage) => void): { readings(batch: readonly RawReading[]): void } {
  let shown_s = Number.NEGATIVE_INFINITY;
  return {
    readings(batch) {
      const last = batch.findLast(({ channel, quality }) => channel === 'force' && quality !== 'unreadable');
      if (!last || last.arrival_s - shown_s < showEvery_s) return;
      shown_s = last.arrival_s;
      const sample = { time_s: 0, force_kN: last.value, table_mm: null, extension_mm: null };
      tell({ kind: 'samples', samples: [sample], received: 0, rejected: 0 });
    },
  };
}
