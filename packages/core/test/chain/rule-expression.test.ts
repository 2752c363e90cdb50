import assert from 'node:assert/strict';
import { test } from 'node:test';
import { evaluateExpression } from '../../src/chain/index.ts';
import { isInputError } from '../../src/errors.ts';

test('products come before sums, brackets before both, and a sign may stand before a value', () => {
  assert.equal(evaluateExpression('1 + 2 * 3 - 4 / 2', {}), 5);
  assert.equal(evaluateExpression('(1 + 2) * -d', { d: 2 }), -6);
  assert.equal(evaluateExpression('8 - 4 - 2', {}), 2);
});

test('a choice takes the branch of its comparison', () => {
  assert.equal(evaluateExpression('d < 18 ? 0.04 : 0.05', { d: 17.9 }), 0.04);
  assert.equal(evaluateExpression('d < 18 ? 0.04 : 0.05', { d: 18 }), 0.05);
  assert.equal(evaluateExpression('(d >= 18 ? 1 : 2) * 10', { d: 18 }), 10);
});

test('a variable that is not known makes no number', () => {
  assert.ok(Number.isNaN(evaluateExpression('2 * p', { d: 8 })));
  assert.ok(Number.isNaN(evaluateExpression('p < 3 ? 1 : 2', { d: 8 })));
});

for (const text of ['', '3 *', '3 d', '(3', 'alert(1)', 'd.constructor', 'toString', '3 ** d', "d + 'x'", '2 ? 3']) {
  test(`"${text}" is refused with the place, and never run`, () => {
    assert.throws(
      () => evaluateExpression(text, { d: 8 }),
      (error) => isInputError(error) && error.code === 'chain/rule-expression' && 'part' in error.context,
    );
  });
}
