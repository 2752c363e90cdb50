import assert from 'node:assert/strict';
import { check, citation, type ReferenceCheck, statisticsChecks } from '../../reference-checks.ts';

interface Verified extends ReferenceCheck {
  readonly data_kind?: string;
  readonly verification?: { readonly computed_once_keys?: readonly string[] };
}

interface Scalar {
  readonly value: number;
  readonly tol: number;
  readonly printed?: string;
}

interface List {
  readonly values: readonly number[];
  readonly tol: number;
}

/** A reference check with its inputs and expected entries within reach by name. */
export interface Expected {
  readonly id: string;
  /** Names the source, and says so where the digits are remembered or were computed and not published. */
  readonly title: string;
  readonly number: (input: string) => number;
  readonly numbers: (input: string) => readonly number[];
  /** `found` must equal the expected scalar within its tolerance; one that no second program confirmed is a regression value only. */
  readonly scalar: (key: string, found: number | null) => void;
  readonly list: (key: string, found: readonly (number | null)[]) => void;
}

export function expectedOf(id: string): Expected {
  const reference = check(statisticsChecks, id) as Verified; // the shape of the whole file, told in reference/README.md
  const inputs = reference.inputs;
  const near = (key: string, found: number | null, value: number, tol: number) =>
    assert.ok(
      found !== null && Math.abs(found - value) <= tol * (1 + 1e-9),
      `${key}: ${found} against ${value} (tolerance ${tol}${once(reference, key)})`,
    );
  return {
    id,
    title: `${id} [${reference.kind}] (${citation(reference)})`,
    number: (input) => Number(inputs[input]),
    numbers: (input) => inputs[input] as readonly number[], // the named input is a list of numbers
    scalar: (key, found) => {
      const { value, tol } = reference.expected[key] as Scalar; // the named entry is a scalar
      near(key, found, value, tol);
    },
    list: (key, found) => {
      const { values, tol } = reference.expected[key] as List; // the named entry is a list
      assert.equal(found.length, values.length, key);
      values.forEach((value, index) => {
        near(`${key}[${index}]`, found[index] ?? null, value, tol);
      });
    },
  };
}

function once(reference: Verified, key: string): string {
  return reference.verification?.computed_once_keys?.includes(key) ? ', regression value' : '';
}
