import assert from 'node:assert/strict';
import { test } from 'node:test';
import { check, citation, type ReferenceCheck, statisticsChecks } from '../reference-checks.ts';

interface Expected {
  readonly value?: number;
  readonly values?: readonly number[];
  readonly tol: number;
}

interface Verified extends ReferenceCheck {
  readonly verification?: { readonly computed_once_keys?: readonly string[] };
}

export type Computed = Readonly<Record<string, number | readonly number[] | null>>;

export function expectedOf(id: string, key: string): Expected {
  return check(statisticsChecks, id).expected[key] as Expected; // shape told in reference/README.md
}

export function inputsOf<T>(id: string): T {
  return check(statisticsChecks, id).inputs as T; // shape differs by check
}

/** Where the expected digits come from, for a title. */
export function origin(id: string): string {
  const reference: Verified = check(statisticsChecks, id);
  const once = reference.verification?.computed_once_keys ?? [];
  const regression = once.length === 0 ? '' : `; ${once.join(', ')}: regression values`;
  return `${reference.kind}${regression}; ${citation(reference)}`;
}

/** Holds every expected key of a check against what was computed; `slack` widens by the tolerance a simulation itself states. */
export function agrees(
  id: string,
  computed: Computed,
  options: { readonly slack?: Readonly<Record<string, number>>; readonly but?: readonly string[] } = {},
): void {
  const { expected } = check(statisticsChecks, id);
  const keys = Object.keys(expected).filter((key) => !options.but?.includes(key));
  assert.deepEqual(Object.keys(computed).toSorted(), keys.toSorted(), 'every expected key is computed');
  for (const key of keys) {
    const { value, values, tol } = expectedOf(id, key);
    const wanted = values ?? [value ?? Number.NaN];
    const found = [computed[key] ?? Number.NaN].flat();
    assert.equal(found.length, wanted.length, key);
    for (const [index, one] of wanted.entries()) {
      const off = Math.abs((found[index] ?? Number.NaN) - one);
      const allowed = tol + (options.slack?.[key] ?? 0);
      assert.ok(off <= allowed * (1 + 1e-9), `${key}: ${found[index]} against ${one}, tolerance ${allowed}`);
    }
  }
}

export function publishedTest(id: string, law: string, compute: () => Computed): void {
  test(`${id}: ${law} [${origin(id)}]`, () => agrees(id, compute()));
}
