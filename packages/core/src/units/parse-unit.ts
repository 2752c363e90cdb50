import type { Unit } from './unit.ts';
import { AMBIGUOUS_UNITS, UNITS } from './unit.ts';

/** What a unit text was found to mean. */
export type UnitFinding =
  | { readonly kind: 'known'; readonly unit: Unit }
  | { readonly kind: 'ambiguous'; readonly choices: readonly string[] }
  | { readonly kind: 'unknown' };

const exact = new Map<string, Unit>();
for (const { unit, spellings } of UNITS) for (const spelling of spellings) exact.set(spelling, unit);

const ambiguous = new Map<string, readonly string[]>();
for (const { spellings, choices } of AMBIGUOUS_UNITS)
  for (const spelling of spellings) ambiguous.set(spelling, choices);

const TON_KINDS: readonly { readonly words: RegExp; readonly symbol: string }[] = [
  { words: /metric|metrisch/, symbol: 'metric tonf' },
  { words: /long|\buk\b|imperial/, symbol: 'long tonf' },
  { words: /short|\bus\b/, symbol: 'short tonf' },
];

/** "tonf (long)", "long ton-force", "tonf_US": a ton whose kind is spelled out beside it, and nothing else. */
function spelledTon(lower: string): Unit | undefined {
  const words = lower.replace(/[_()[\]-]/g, ' ').trim();
  if (!/^((metric|metrisch|long|short|uk|us|imperial|tons?|tonf|force)\s*)+$/.test(words) || !/\btons?f?\b/.test(words))
    return undefined;
  const kinds = TON_KINDS.filter((kind) => kind.words.test(words));
  return kinds.length === 1 ? exact.get(kinds[0]?.symbol ?? '') : undefined;
}

/**
 * Reads a unit name: N daN kN MN kgf kp tf lbf kip, tonf with its kind spelled out; um mm cm m in; s ms us min h hh:mm:ss.
 * Case counts where it tells units apart (MN); otherwise it does not. A bare ton is ambiguous and comes back with its choices.
 */
export function parseUnit(text: string): UnitFinding {
  const trimmed = text
    .trim()
    .replace(/^[[({<]+|[\])}>]+$/g, '')
    .trim();
  const lower = trimmed.toLowerCase();
  const known = exact.get(trimmed) ?? spelledTon(text.trim().toLowerCase());
  if (known) return { kind: 'known', unit: known };
  const choices = ambiguous.get(lower);
  if (choices) return { kind: 'ambiguous', choices };
  const loose = exact.get(lower);
  return loose ? { kind: 'known', unit: loose } : { kind: 'unknown' };
}

/** Value in the bench unit (kN, mm, s). NaN stays NaN. Clock units hold seconds already. */
export function toBench(value: number, unit: Unit): number {
  return (value * unit.multiply) / unit.divide;
}

/** A bench value (kN, mm, s) in the given unit. */
export function fromBench(value: number, unit: Unit): number {
  return (value * unit.divide) / unit.multiply;
}

/** Seconds of a clock text such as 1:02:03.5 or 01:02:03,5; null when it is none. Two parts (02:03) are ambiguous: null. */
export function clockSeconds(text: string): number | null {
  const match = /^(\d+):([0-5]?\d):([0-5]?\d(?:[.,]\d*)?)$/.exec(text.trim());
  if (!match) return null;
  return Number(match[1]) * 3600 + Number(match[2]) * 60 + Number((match[3] ?? '').replace(',', '.'));
}
