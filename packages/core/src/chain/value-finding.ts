import type { Choice, Finding } from './choice.ts';
import { findInRules } from './rule-finding.ts';
import { findInTables } from './table-finding.ts';

/** A value from the tables where a row of the size has one, else from the rules; null where there is neither. */
export function findValue(choice: Choice, quantity: string): Finding | null {
  return (
    findInTables(choice, quantity)[0] ??
    findInRules(choice, quantity, (other) => findValue(choice, other)?.value ?? null)
  );
}
