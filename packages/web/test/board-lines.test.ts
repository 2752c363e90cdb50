import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { boardLines } from '../src/features/board/board-lines.ts';

/** Only what the board looks at. */
const piece = (name: string, product: string, standing: PieceFinding['standing'], mode: string) =>
  ({
    piece: name,
    product,
    standing,
    sample: `${product}-S1`,
    pull: null,
    breaks: [{ mode, position: 'crown' }],
  }) as unknown as PieceFinding;
const product = (name: string, supplier: string) => ({ product: name, supplier }) as unknown as ProductFinding;

const finding = {
  products: [product('ASH-8', 'Ash'), product('BIRCH-8', 'Birch'), product('FIR-10', 'Fir')],
  pieces: [
    piece('A-1', 'ASH-8', 'conforms', 'shear'),
    piece('A-2', 'ASH-8', 'does not conform', 'brittle'),
    piece('B-1', 'BIRCH-8', 'conforms', 'brittle'),
  ],
};
const named = (filter: Parameters<typeof boardLines>[1]) =>
  boardLines(finding, filter).map((line) => (line.kind === 'product' ? line.product.product : line.piece.piece));

test('without a filter every product and every piece stands on the board, products without pieces too', () => {
  assert.deepEqual(named({ words: ' ', verdict: null }), ['ASH-8', 'A-1', 'A-2', 'BIRCH-8', 'B-1', 'FIR-10']);
});

test('all words must be said of a piece, whatever their case; a product without such a piece has no head', () => {
  assert.deepEqual(named({ words: 'BRITTLE ash', verdict: null }), ['ASH-8', 'A-2']);
  assert.deepEqual(named({ words: 'fatigue', verdict: null }), []);
});

test('a verdict and words must both be met', () => {
  assert.deepEqual(named({ words: 'brittle', verdict: 'conforms' }), ['BIRCH-8', 'B-1']);
});
