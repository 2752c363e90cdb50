import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import type { MeasuredValue } from '@provinghouse/core';
import {
  budgetOf,
  dotsOf,
  intervalsOf,
  longChainOf,
  type PieceInFinding,
  type ProductInFinding,
} from '../src/index.ts';
import { demoChain, demoIntervals } from './demo.ts';

const product: ProductInFinding = {
  product: 'A',
  specification: { limits: [] },
  inference: { tolerance: { lower: 36, coverage: 0.95, confidence: 0.95 } },
  longChain: demoChain().finding,
};

function measured(value: number, isAtLeast = false): MeasuredValue {
  const contributions = [{ name: 'class', standardUncertainty: 0.2, source: 'invented' }];
  return {
    value,
    unit: 'kN',
    expandedUncertainty: 0.4,
    coverageFactor: 2,
    isAtLeast,
    origin: 'invented',
    contributions,
  };
}

function piece(name: string, pull: PieceInFinding['pull'], position = 'weld'): PieceInFinding {
  return { piece: name, product: 'A', links: 5, pull, breaks: [{ position }], judgements: [] };
}

const pieces = [
  piece('A-1', { use: 'value', maximum: measured(42), reading: null }),
  piece('A-2', { use: 'at least', maximum: measured(41, true), reading: null }, 'in grip'),
  piece('A-3', { use: 'none', maximum: null, reading: { maximumForce_kN: 12 } }),
  piece('A-4', null),
  { ...piece('B-1', { use: 'value', maximum: measured(9), reading: null }), product: 'B' },
];

describe('the data of the figures', () => {
  test('keep every piece that shows a force, and none of another product', () => {
    const [own] = dotsOf([product], pieces).products;
    assert.deepEqual(
      own?.pieces.map((dot) => [dot.piece, dot.force_kN, dot.use]),
      [
        ['A-1', 42, 'value'],
        ['A-2', 41, 'at least'],
        ['A-3', 12, 'left out'],
      ],
    );
    assert.equal(own?.tolerance?.bound, 36);
    assert.equal(own?.minimum_kN, null);
  });

  test('give the long chain the pulls that show a breaking force, a break in the grip without a mode', () => {
    assert.deepEqual(longChainOf(product, pieces)?.pieces, [
      { links: 5, force_kN: 42, mode: 'weld', isAtLeast: false },
      { links: 5, force_kN: 41, mode: null, isAtLeast: true },
    ]);
    assert.equal(longChainOf({ ...product, longChain: null }, pieces), null);
  });

  test('take the budget of the least force that counts', () => {
    assert.equal(budgetOf(product, pieces)?.piece, 'A-2');
    assert.equal(budgetOf(product, []), null);
  });

  test('have no comparison where there is no pair', () => {
    assert.equal(intervalsOf(null), null);
    assert.equal(intervalsOf({ pairs: [], confidence: 0.95 }), null);
    assert.equal(demoIntervals().pairs.length, 15);
  });
});
