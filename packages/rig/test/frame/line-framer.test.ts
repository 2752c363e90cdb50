import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { lineFramer } from '../../src/frame/line-framer.ts';

function framed(chunks: readonly Uint8Array[], maximumBytes?: number) {
  const framer = lineFramer(maximumBytes);
  const lines: string[] = [];
  const overlong: number[] = [];
  for (const chunk of chunks)
    framer.push(chunk, {
      line: (bytes) => void lines.push(Buffer.from(bytes).toString('latin1')),
      overlong: (bytes) => void overlong.push(bytes.length),
    });
  return { lines, overlong, rest: framer.takeRest() };
}

const bytesOf = (text: string) => new Uint8Array(Buffer.from(text, 'latin1'));

test('a stream split after every byte gives the same lines as in one piece', () => {
  const text = 'F 1.0\r\nF 2.0\nF 3.0\r\r\n\nF 4';
  const whole = framed([bytesOf(text)]);
  assert.deepEqual(whole.lines, ['F 1.0', 'F 2.0', 'F 3.0']);
  assert.equal(Buffer.from(whole.rest ?? []).toString(), 'F 4');
  for (let cut = 0; cut <= text.length; cut++)
    assert.deepEqual(framed([bytesOf(text.slice(0, cut)), bytesOf(text.slice(cut))]), whole);
  assert.deepEqual(framed([...text].map(bytesOf)), whole);
});

test('however bytes are chunked, lines are the same and no byte but line ends is lost', () => {
  const piece = fc.uint8Array({ maxLength: 30 });
  const property = fc.property(
    fc.array(piece, { maxLength: 20 }),
    fc.array(fc.nat(600), { maxLength: 30 }),
    (all, cuts) => {
      const bytes = new Uint8Array(Buffer.concat(all));
      const at = [0, ...cuts.map((cut) => cut % (bytes.length + 1)).toSorted((a, b) => a - b), bytes.length];
      const chunks = at.slice(1).map((end, i) => bytes.subarray(at[i], end));
      const found = framed(chunks);
      assert.deepEqual(found, framed([bytes]));
      const kept = found.lines.join('') + Buffer.from(found.rest ?? []).toString('latin1');
      const expected = Buffer.from(bytes.filter((byte) => byte !== 10 && byte !== 13)).toString('latin1');
      assert.equal(kept, expected);
    },
  );
  fc.assert(property, { seed: 7, numRuns: 300 });
});

test('a flood without line ends is handed out as overlong and held no longer', () => {
  const found = framed([new Uint8Array(5000).fill(65), bytesOf('B\nF 1\n')], 1000);
  assert.deepEqual(found.overlong, [5000]);
  assert.deepEqual(found.lines, ['B', 'F 1']);
});
