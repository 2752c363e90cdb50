/** A chance for a sentence: three figures, and never a certainty that is none. */
export function chanceWords(chance: number): string {
  if (chance > 0.999) return 'more than 99.9 %';
  if (chance < 0.001) return 'less than 0.1 %';
  return `${Number((100 * chance).toPrecision(3))} %`;
}
