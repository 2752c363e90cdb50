import assert from 'node:assert/strict';
import type { Limit, Quantity, Specification } from '../../src/chain/index.ts';

/** The limit of a quantity, which must be there. */
export function limitOf(specification: Specification, quantity: Quantity): Limit {
  const found = specification.limits.find((limit) => limit.quantity === quantity);
  assert.ok(found, `${specification.title} has a limit for ${quantity}`);
  return found;
}
