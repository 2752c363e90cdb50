/** Pounds-force to kilonewtons, exact (international pound times standard gravity). */
export const kilonewtonsPerPoundForce = 0.0044482216152605;
/** International pound to kilograms, exact. */
export const kilogramsPerPound = 0.45359237;

const factors: Readonly<Record<string, number>> = {
  'lbf>kN': kilonewtonsPerPoundForce,
  'lb>t': kilogramsPerPound / 1000,
  'kg>t': 1 / 1000,
};

/**
 * A table value in the bench unit of its quantity: forces in kN, working load limits in t, the rest as it stands.
 * Null when the unit cannot be brought to the bench unit: nothing is guessed.
 */
export function toBenchUnit(value: number, from: string, to: string): number | null {
  if (from === to) return value;
  const factor = factors[`${from}>${to}`];
  return factor === undefined ? null : tidy(value * factor);
}

/** Without the last digits that binary arithmetic leaves behind: 8 - 0.32 is 7.68. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
