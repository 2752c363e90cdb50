/** A share that was counted, in whole per cent. */
export function sharePercent(share: number): string {
  return `${Math.round(100 * share)}\u00a0%`;
}

/** A chance in whole per cent; it is never told as certain, so its ends are bounds. */
export function chancePercent(probability: number): string {
  if (probability < 0.005) return 'under 1\u00a0%';
  if (probability > 0.995) return 'over 99\u00a0%';
  return sharePercent(probability);
}
