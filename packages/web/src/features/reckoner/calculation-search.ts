import { type Calculation, type CalculationGroup, calculationGroups } from '@provinghouse/core';

/** The calculations that speak of all the words, by subject: those with a word in their title come first within it. */
export function findCalculations(words: string): readonly CalculationGroup[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return calculationGroups.flatMap(({ subject, calculations }) => {
    const found = calculations
      .map((calculation) => ({ calculation, title: titleWords(calculation), all: allWords(calculation, subject) }))
      .filter(({ all }) => wanted.every((word) => all.includes(word)))
      .toSorted((a, b) => Number(named(b.title, wanted)) - Number(named(a.title, wanted)))
      .map(({ calculation }) => calculation);
    return found.length === 0 ? [] : [{ subject, calculations: found }];
  });
}

function named(title: string, wanted: readonly string[]): boolean {
  return wanted.every((word) => title.includes(word));
}

function titleWords({ name, title }: Calculation): string {
  return `${title} ${name}`.toLowerCase();
}

function allWords(calculation: Calculation, subject: string): string {
  const { inputs, outputs } = calculation;
  const fields = [...inputs, ...outputs].map(({ key, meaning }) => `${key} ${meaning}`);
  return [subject, titleWords(calculation), ...fields].join(' ').toLowerCase();
}
