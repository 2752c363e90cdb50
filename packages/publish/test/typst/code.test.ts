import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import fc from 'fast-check';
import { codeColumn, codeText } from '../../src/typst/code.ts';
import { literal } from '../../src/typst/escape.ts';

describe('a code', () => {
  test('is the same text with or without places to break', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (code) => {
        assert.equal(codeText(code).replaceAll('\u200b', ''), literal(code).replaceAll('\u200b', ''));
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test('of up to sixteen letters stands on one line; a longer one narrows its column and may break', () => {
    assert.equal(codeText('DAMSON-10-2'), '"DAMSON-10-2"');
    assert.equal(codeColumn('Piece', ['DAMSON-10-2']).width, undefined);
    assert.match(codeText('A-LONG-CODE-OF-A-PIECE'), /-\u200b/);
    assert.equal(codeColumn('Piece', ['A-LONG-CODE-OF-A-PIECE']).width, '27mm');
  });
});
