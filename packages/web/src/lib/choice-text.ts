/** Words of the choice of a specification. Part of the catalogue in text.ts. */
export const choiceText = {
  standard: 'Specification',
  grade: 'Grade',
  size: 'Size',
  none: 'none',
  any: (least: number, greatest: number) => `any from ${least} to ${greatest} mm`,
  trade: (tradeSize: string, size_mm: number) => `${tradeSize} in (${size_mm} mm)`,
} as const;
