import assert from 'node:assert/strict';
import type { PulledPiece } from '../../../src/statistics/weakest-link/index.ts';
import { check, citation, type ReferenceCheck, statisticsChecks } from '../../reference-checks.ts';

export interface Expected {
  readonly value: number;
  readonly tol: number;
}

export interface ExpectedList {
  readonly values: readonly number[];
  readonly tol: number;
}

export function reference(id: string): ReferenceCheck {
  return check(statisticsChecks, id);
}

/** The title of a test against a check: what it is, where it comes from, and how far its digits are to be trusted. */
export function titleOf(one: ReferenceCheck, law: string): string {
  const kind = one.kind === 'published' ? '' : `, ${one.kind}`;
  return `${one.id}: ${law} (${citation(one)}${kind})`;
}

/** True when the expected digits came from one program only: then this is a regression value. */
export function isRegression(one: ReferenceCheck, key: string): boolean {
  const { verification } = one as unknown as { verification?: { computed_once_keys?: readonly string[] } }; // told in reference/README.md
  return verification?.computed_once_keys?.includes(key) ?? false;
}

export function expected(one: ReferenceCheck, key: string): Expected {
  return one.expected[key] as Expected; // scalars have this shape, told in reference/README.md
}

export function expectedList(one: ReferenceCheck, key: string): ExpectedList {
  return one.expected[key] as ExpectedList; // arrays have this shape, told in reference/README.md
}

/** `value` has the digits of `key`, within the tolerance kept with them. */
export function assertDigits(one: ReferenceCheck, key: string, value: number | null | undefined): void {
  const { value: wanted, tol } = expected(one, key);
  assert.ok(Math.abs((value ?? Number.NaN) - wanted) <= tol, `${key}: ${value}, expected ${wanted} +/- ${tol}`);
}

export function assertAllDigits(one: ReferenceCheck, key: string, values: readonly (number | null)[]): void {
  const { values: wanted, tol } = expectedList(one, key);
  assert.equal(values.length, wanted.length);
  for (const [k, value] of values.entries()) {
    const difference = Math.abs((value ?? Number.NaN) - (wanted[k] ?? Number.NaN));
    assert.ok(difference <= tol, `${key}[${k}]: ${value}, expected ${wanted[k]} +/- ${tol}`);
  }
}

export function brokenAt(forces: readonly number[], mode: string, links = 1): PulledPiece[] {
  return forces.map((force_kN) => ({ links, force_kN, mode, isAtLeast: false }));
}

/** Breaks and suspensions of a check as pieces of one link. */
export function piecesOf(one: ReferenceCheck): PulledPiece[] {
  const { failures, censored, x } = one.inputs as Record<string, readonly number[] | undefined>; // told in reference/README.md
  const held = (censored ?? []).map((force_kN) => ({ links: 1, force_kN, mode: null, isAtLeast: true }));
  return [...brokenAt(failures ?? x ?? [], 'bar'), ...held];
}
