/** A force transducer's slow faults. */
export interface Transducer {
  /** Error of indication, as a share of the reading; constant for a rig, inside its class. */
  readonly gainError: number;
  readonly zero_kN: number;
  readonly zeroDrift_kN_per_s: number;
  readonly noise_kN: number;
  /** Reading at which the recorder clips. */
  readonly rangeMaximum_kN: number;
}

/** What the transducer indicates for a force; `noise_kN` is this reading's own draw. Not clipped, not rounded. */
export function indicated_kN(
  transducer: Transducer,
  true_: { readonly force_kN: number; readonly time_s: number; readonly noise_kN: number },
): number {
  return (
    true_.force_kN * (1 + transducer.gainError) +
    transducer.zero_kN +
    transducer.zeroDrift_kN_per_s * true_.time_s +
    true_.noise_kN
  );
}

/**
 * First-order lag after `since_s` of an input that ran straight from `from_kN` at `slope_kN_per_s`, exactly: the same
 * output whether the time is crossed in one stride or in a hundred.
 */
export function lagged_kN(
  lag_s: number,
  state: { readonly output_kN: number; readonly from_kN: number; readonly slope_kN_per_s: number },
  since_s: number,
): number {
  const input = state.from_kN + state.slope_kN_per_s * since_s;
  if (lag_s <= 0) return input;
  const steady = state.slope_kN_per_s * lag_s;
  return input - steady + (state.output_kN - state.from_kN + steady) * Math.exp(-since_s / lag_s);
}

/** What the frame's ringing adds to the reading once a chain has parted at `parted_kN`; first it springs back. */
export function ringing_kN(parted_kN: number, since_s: number): number {
  return -0.05 * parted_kN * Math.exp(-since_s / 0.07) * Math.sin(2 * Math.PI * 13 * since_s);
}

/** To the nearest whole step of the display; 0 leaves the value as it is. */
export function rounded(value: number, resolution: number): number {
  if (resolution <= 0) return value;
  const steps_per_unit = Math.round(1 / resolution);
  // A division by a whole number gives the decimal nearest to the step; a product would leave a tail of digits.
  return Math.abs(steps_per_unit * resolution - 1) < 1e-9
    ? Math.round(value * steps_per_unit) / steps_per_unit
    : Math.round(value / resolution) * resolution;
}
