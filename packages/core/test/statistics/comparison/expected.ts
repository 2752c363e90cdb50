import assert from 'node:assert/strict';
import type { ReferenceCheck } from '../../reference-checks.ts';

interface Scalar {
  readonly value: number;
  readonly tol: number;
}

interface List {
  readonly values: readonly number[];
  readonly tol: number;
}

/** Asserts that a number meets the expected value of a check inside its stated tolerance. */
export function meets(reference: ReferenceCheck, key: string, actual: number | null | undefined): void {
  const { value, tol } = reference.expected[key] as Scalar; // shape of a scalar told in stats-checks.md
  const off = Math.abs((actual ?? Number.NaN) - value);
  assert.ok(off <= tol, `${reference.id} ${key}: ${actual} instead of ${value}, tolerance ${tol}`);
}

/** The same for a list of expected values. */
export function meetsAll(reference: ReferenceCheck, key: string, actual: readonly (number | null | undefined)[]): void {
  const { values, tol } = reference.expected[key] as List; // shape of a list told in stats-checks.md
  assert.equal(actual.length, values.length);
  values.forEach((value, index) => {
    const off = Math.abs((actual[index] ?? Number.NaN) - value);
    assert.ok(off <= tol, `${reference.id} ${key} ${index}: ${actual[index]} instead of ${value}, tolerance ${tol}`);
  });
}

/** "memory" or "computed" where the expected digits are not published ones. */
export function kindWords(reference: ReferenceCheck): string {
  return reference.kind === 'published' ? '' : `, ${reference.kind}`;
}
