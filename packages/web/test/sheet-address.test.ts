import assert from 'node:assert/strict';
import { test } from 'node:test';
import { calculations, quantityNames } from '@provinghouse/core';
import fc from 'fast-check';
import { isQuantity, linkText, longestSheet, type Sheet } from '../src/features/reckoner/sheet.ts';
import { sheetAddress } from '../src/features/reckoner/sheet-address.ts';

const plain = { noNullPrototype: true } as const;

const typed = fc.oneof(
  fc.string({ minLength: 1 }).filter((text) => text.trim() !== ''),
  fc.double({ noNaN: true }).map((value) => String(value).replace('.', ',')),
  fc
    .record(
      {
        step: fc.nat(longestSheet),
        key: fc.constantFrom('size_mm', 'force_kN'),
        side: fc.constantFrom('input', 'result'),
      },
      plain,
    )
    .map(linkText),
);

const step = fc.constantFrom(...calculations).chain(({ name, inputs }) =>
  fc
    .subarray(inputs.map(({ key }) => key))
    .chain((keys) => fc.tuple(...keys.map((key) => typed.map((entry) => [key, entry] as const))))
    .map((entries) => ({ calculation: name, entries: Object.fromEntries(entries) })),
);

const chain = fc.record(
  {
    key: fc.constantFrom('en-818-3~4~8', 'astm-a413~30~3/8in', 'iacs-ur-w22~R3 stud~50.5'),
    requirement: fc.constantFrom(...Object.keys(quantityNames).filter(isQuantity)),
  },
  plain,
);

const sheet: fc.Arbitrary<Sheet> = fc.record(
  { chain: fc.option(chain), steps: fc.array(step, { maxLength: longestSheet }) },
  plain,
);

test('an address gives again the sheet it was written from', () => {
  fc.assert(
    fc.property(sheet, (one) => assert.deepEqual(sheetAddress.read(sheetAddress.write(one)), one)),
    { seed: 7, numRuns: 300 },
  );
});

test('the order of an address does not matter, and an unknown limit is the breaking force', () => {
  const read = sheetAddress.read('2=link-mass&1.force_kN=40,5&limit=nothing&1=grade-of-chain&chain=en-818-3~4~8');
  assert.deepEqual(read.chain, { key: 'en-818-3~4~8', requirement: 'breakingForce' });
  assert.deepEqual(read.steps, [
    { calculation: 'grade-of-chain', entries: { force_kN: '40,5' } },
    { calculation: 'link-mass', entries: {} },
  ]);
});

test('entries without a calculation, and blank ones, are nothing', () => {
  assert.deepEqual(sheetAddress.read('3.force_kN=4&2=link-mass'), { chain: null, steps: [] });
  assert.equal(
    sheetAddress.write({ chain: null, steps: [{ calculation: 'link-mass', entries: { size_mm: ' ' } }] }),
    '1=link-mass',
  );
});
