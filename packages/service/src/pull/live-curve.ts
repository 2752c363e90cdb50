import type { WatchSample } from '@provinghouse/core';

/** A curve that never grows past its bound and never loses an extreme: for a viewer who comes late. */
export interface LiveCurve {
  add(samples: readonly WatchSample[]): void;
  /** The curve so far, oldest first. */
  points(): WatchSample[];
}

interface Stretch {
  readonly samples: number;
  readonly low: WatchSample;
  readonly high: WatchSample;
}

/**
 * Keeps the lowest and the highest sample of each of at most `stretches` stretches of like length; when all are full, neighbours are joined and
 * a stretch takes twice the samples.
 */
export function liveCurve(stretches = 1000): LiveCurve {
  let full: Stretch[] = [];
  let length = 1;
  let open: Stretch | null = null;
  let last: WatchSample | null = null;

  function close(): void {
    if (open) full.push(open);
    open = null;
    if (full.length < stretches) return;
    full = Array.from({ length: Math.ceil(full.length / 2) }, (_, i) => joined(full[2 * i], full[2 * i + 1]));
    length *= 2;
  }
  return {
    add(samples) {
      for (const sample of samples) {
        open = open ? widened(open, sample) : { samples: 1, low: sample, high: sample };
        if (open.samples >= length) close();
        last = sample;
      }
    },
    points() {
      const points = [...full, ...(open ? [open] : [])].flatMap(inOrder);
      if (last && points.at(-1) !== last) points.push(last);
      return points;
    },
  };
}

function widened({ samples, low, high }: Stretch, sample: WatchSample): Stretch {
  return {
    samples: samples + 1,
    low: sample.force_kN < low.force_kN ? sample : low,
    high: sample.force_kN > high.force_kN ? sample : high,
  };
}

function joined(a: Stretch | undefined, b: Stretch | undefined): Stretch {
  if (!a || !b) {
    const one = a ?? b;
    if (!one) throw new Error('two stretches that are not there cannot be joined');
    return one;
  }
  return {
    samples: a.samples + b.samples,
    low: b.low.force_kN < a.low.force_kN ? b.low : a.low,
    high: b.high.force_kN > a.high.force_kN ? b.high : a.high,
  };
}

function inOrder({ low, high }: Stretch): WatchSample[] {
  if (low === high) return [low];
  return low.time_s <= high.time_s ? [low, high] : [high, low];
}

/** Samples for a screen: at most about `most` of them, the lowest and the highest of each stretch and the last of all. */
export function thinned(samples: readonly WatchSample[], most = 16): readonly WatchSample[] {
  if (samples.length <= most) return samples;
  const size = Math.ceil(samples.length / Math.max(1, Math.floor((most - 1) / 2)));
  const kept: WatchSample[] = [];
  for (let from = 0; from < samples.length; from += size) {
    const stretch = samples
      .slice(from, from + size)
      .reduce<Stretch | null>(
        (all, sample) => (all ? widened(all, sample) : { samples: 1, low: sample, high: sample }),
        null,
      );
    if (stretch) kept.push(...inOrder(stretch));
  }
  const last = samples.at(-1);
  if (last && kept.at(-1) !== last) kept.push(last);
  return kept;
}
