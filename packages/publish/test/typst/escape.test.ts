import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import fc from 'fast-check';
import { literal, shown, verbatim } from '../../src/typst/escape.ts';
import { fontFamily, fontFiles } from '../../src/typst/font.ts';

const compiler = NodeCompiler.create({ fontArgs: [{ fontBlobs: [...fontFiles()] }] });

/** The strings as Typst itself reads them back: a query of what was written, so that code would show as code. */
function readBack(literals: readonly string[]): readonly string[] {
  const lines = literals.map((one) => `#metadata(${one}) <said>`);
  return compiler.query({ mainFileContent: lines.join('\n') }, { selector: '<said>', field: 'value' });
}

/** Letters, every sign that means something in Typst, blanks, controls, other scripts. */
const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.string({ unit: fc.constantFrom(...'\\"#$*_`<>@=-+/[]{}()~\'\n\r\t;:,.ax0 '), maxLength: 60 }),
);

describe('user text', () => {
  test('comes back from Typst as the text it was, never as markup or code', () => {
    const property = fc.property(fc.array(anyText, { minLength: 20, maxLength: 40 }), (texts) => {
      assert.deepEqual(readBack(texts.map(verbatim)), texts.map(shown));
      assert.deepEqual(
        readBack(texts.map(literal)).map((text) => text.replaceAll('\u200b', '')),
        texts.map(shown),
      );
    });
    fc.assert(property, { seed: 7, numRuns: 25 });
  });

  test('can be set as PDF/A whatever it holds', () => {
    const page = `#set text(font: "${fontFamily}", fallback: false)\n`;
    const property = fc.property(fc.array(anyText, { minLength: 20, maxLength: 40 }), (texts) => {
      const source = page + texts.map((text) => `#{ ${literal(text)} }`).join('\n\n');
      assert.ok(compiler.pdf({ mainFileContent: source }, { pdfStandard: 'a-2b' }).length > 0);
    });
    fc.assert(property, { seed: 7, numRuns: 15 });
  });

  const cases = [
    { law: 'a character the font lacks appears as its code point', given: '中', becomes: '[U+4E2D]' },
    {
      law: 'a sign that turns the direction of text appears, and does not act',
      given: 'a\u202eb',
      becomes: 'a[U+202E]b',
    },
    { law: 'a control character appears', given: 'a\u0007b', becomes: 'a[U+0007]b' },
    {
      law: 'half of a surrogate pair is the replacement character, as a code point',
      given: '\ud800',
      becomes: shown('\ufffd'),
    },
    { law: 'line ends and runs of blanks are one space', given: ' a \r\n\t b ', becomes: 'a b' },
    { law: 'accents are composed', given: 'e\u0301', becomes: 'é' },
  ];
  for (const { law, given, becomes } of cases) {
    test(law, () => assert.equal(shown(given), becomes));
  }

  test('a long run gets places to break, a hash none', () => {
    assert.match(literal('x'.repeat(60)), /\u200b/);
    assert.doesNotMatch(verbatim('0'.repeat(64)), /\u200b/);
  });
});
