import assert from 'node:assert/strict';
import { test } from 'node:test';
import { calculations, reckon, rulebook } from '@provinghouse/core';
import fc from 'fast-check';
import { chainValues } from '../src/features/reckoner/chain-values.ts';
import { linkText, type Sheet } from '../src/features/reckoner/sheet.ts';
import { sheetAddress } from '../src/features/reckoner/sheet-address.ts';
import {
  addedBelow,
  openedAlone,
  sent,
  withChain,
  withEntry,
  withoutChain,
  withoutStep,
} from '../src/features/reckoner/sheet-edit.ts';
import { reckonSheet } from '../src/features/reckoner/sheet-reckoning.ts';

const read = sheetAddress.read;
const outputsOf = (sheet: Sheet, step: number) => reckonSheet(sheet).steps[step - 1]?.reckoning?.outputs;
const fieldOf = (sheet: Sheet, step: number, key: string) =>
  reckonSheet(sheet).steps[step - 1]?.fields.find(({ input }) => input.key === key);

/** The row of 8 mm in the load table of EN 818-3. */
const published = rulebook.standards
  .find(({ id }) => id === 'EN 818-3')
  ?.tables.find(({ id }) => id === 'loads')
  ?.rows.find(({ d }) => d === 8);

test('every calculation reckons on a sheet what it reckons alone, with a decimal comma too', () => {
  for (const { name, example } of calculations) {
    const entries = Object.fromEntries(
      Object.entries(example).map(([key, value]) => [key, String(value).replace('.', ',')]),
    );
    const { reckoning, fault, missing } =
      reckonSheet({ chain: null, steps: [{ calculation: name, entries }] }).steps[0] ?? {};
    assert.deepEqual(reckoning, reckon(name, example), name);
    assert.equal(fault, null);
    assert.deepEqual(missing, []);
  }
});

test('a result that feeds the next calculation follows its own entries', () => {
  const sheet = read(
    '1=grade-breaking-force&1.grade=40&1.size_mm=8&2=working-load-limit&2.breakingForce_kN=~1!breakingForce_kN',
  );
  assert.equal(outputsOf(sheet, 2)?.workingLoadLimit_t, published?.workingLoadLimit);
  const wider = withEntry(sheet, { step: 1, key: 'size_mm' }, '10');
  const row = rulebook.standards
    .find(({ id }) => id === 'EN 818-3')
    ?.tables.find(({ id }) => id === 'loads')
    ?.rows.find(({ d }) => d === 10);
  assert.equal(outputsOf(wider, 2)?.workingLoadLimit_t, row?.workingLoadLimit);
});

test('the chain at hand fills the fields that ask for its size and its limits', () => {
  const chain = { key: 'en-818-3~4~8', requirement: 'breakingForce' } as const;
  const blank = read('1=guard-band&2=link-mass&3=pieces-for-mean');
  const sheet = withChain(blank, chain, chainValues(chain, []).values);
  assert.equal(Number(fieldOf(sheet, 1, 'lowerLimit')?.shown), published?.breakingForce);
  assert.equal(Number(fieldOf(sheet, 3, 'limit_kN')?.shown), published?.breakingForce);
  assert.equal(Number(fieldOf(sheet, 2, 'size_mm')?.shown), published?.d);
  assert.equal(fieldOf(sheet, 1, 'upperLimit')?.fault ?? null, null);
  const without = withoutChain(sheet, reckonSheet(sheet));
  assert.equal(fieldOf(without, 1, 'lowerLimit')?.link, null);
  assert.equal(Number(fieldOf(without, 1, 'lowerLimit')?.shown), published?.breakingForce);
});

test('a calculation put below takes what means the same, and nothing that does not', () => {
  const sheet = read('1=strength-split&1.breakingForce_kN=33,2&1.area_mm2=102&1.size_mm=8');
  const stress = addedBelow('stress-uncertainty', reckonSheet(sheet), sheet);
  assert.ok(stress);
  assert.equal(fieldOf(stress, 2, 'force_kN')?.shown, '33,2');
  assert.equal(fieldOf(stress, 2, 'area_mm2')?.shown, '102');
  const energy = addedBelow('parting-energy', reckonSheet(sheet), sheet);
  assert.ok(energy);
  assert.equal(fieldOf(energy, 2, 'force_kN')?.shown, '', 'a breaking force is not the force at parting');
});

test('a field of the same meaning keeps its value when another calculation is opened, and when one comes back', () => {
  const sheet = read('1=mean-stress&1.force_kN=33,2&1.area_mm2=102');
  const remembered = new Map([['area_mm2', '102']]);
  const opened = openedAlone('grade-of-chain', reckonSheet(sheet), sheet, remembered);
  assert.deepEqual(opened.steps, [{ calculation: 'grade-of-chain', entries: { force_kN: '33,2' } }]);
  const back = openedAlone('mean-stress', reckonSheet(opened), opened, remembered);
  assert.deepEqual(back.steps[0]?.entries, { force_kN: '33,2', area_mm2: '102' });
});

test('a result is sent into the calculation that stands below, else into a new one', () => {
  const sheet = read('1=nominal-area&1.size_mm=8&2=mean-stress&2.force_kN=40');
  const result = { step: 1, key: 'area_mm2' };
  const into = sent(result, { calculation: 'mean-stress', key: 'area_mm2' }, reckonSheet(sheet), sheet);
  assert.equal(into?.step, 2);
  assert.equal(into.sheet.steps[1]?.entries.area_mm2, linkText({ ...result, side: 'result' }));
  const anew = sent(result, { calculation: 'strength-split', key: 'area_mm2' }, reckonSheet(sheet), sheet);
  assert.equal(anew?.step, 3);
});

test('taking a calculation off leaves every number that stood below as it was', () => {
  const links = read(
    '1=nominal-area&1.size_mm=8&2=mean-stress&2.force_kN=40&2.area_mm2=~1!area_mm2&3=grade-of-chain&3.force_kN=~2.force_kN&3.size_mm=~1.size_mm',
  );
  const before = reckonSheet(links);
  for (const number of [1, 2]) {
    const after = reckonSheet(withoutStep(links, number, before));
    const kept = before.steps.filter((step) => step.number !== number).map(({ reckoning }) => reckoning?.outputs);
    assert.deepEqual(
      after.steps.map(({ reckoning }) => reckoning?.outputs),
      kept,
    );
  }
});

test('a link that points nowhere, below itself or at nothing yet says so at its field', () => {
  for (const entry of ['~5!area_mm2', '~1.force_kN', '~0.size_mm', '~1!nothing']) {
    const sheet: Sheet = {
      chain: null,
      steps: [{ calculation: 'mean-stress', entries: { force_kN: entry, area_mm2: '100' } }],
    };
    const [step] = reckonSheet(sheet).steps;
    assert.equal(step?.reckoning, null);
    assert.ok(step?.fields[0]?.fault, entry);
  }
});

test('whatever is typed, a sheet is reckoned or says what is wrong; it never gives a number that is none', () => {
  const entry = fc.oneof(
    fc.constantFrom('', '0', '-1', '1e9', '1,5', '1.2.3', 'eight', '~1!size_mm', '100', '50', '2'),
    fc.double({ min: 0.01, max: 100, noNaN: true }).map(String),
  );
  const steps = fc.array(
    fc.constantFrom(...calculations).chain(({ name, inputs }) =>
      fc.tuple(...inputs.map(({ key }) => entry.map((one) => [key, one] as const))).map((entries) => ({
        calculation: name,
        entries: Object.fromEntries(entries),
      })),
    ),
    { minLength: 1, maxLength: 3 },
  );
  fc.assert(
    fc.property(steps, (some) => {
      for (const step of reckonSheet({ chain: null, steps: some }).steps) {
        for (const value of Object.values(step.reckoning?.outputs ?? {})) assert.ok(!Number.isNaN(value), step.name);
        const isTold =
          step.missing.length > 0 || step.fault !== null || step.fields.some(({ fault }) => fault !== null);
        assert.ok(step.reckoning !== null || isTold || step.fields.every(({ shown }) => shown === ''), step.name);
      }
    }),
    { seed: 7, numRuns: 600 },
  );
});

test('an unknown calculation of an address is told, and those beside it are reckoned', () => {
  const [first, second] = reckonSheet(read('1=nothing&2=nominal-area&2.size_mm=8')).steps;
  assert.equal(first?.calculation, null);
  assert.ok(second?.reckoning);
});
