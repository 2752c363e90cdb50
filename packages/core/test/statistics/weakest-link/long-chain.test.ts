import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  breakModeOf,
  type LongChainAsked,
  longChain,
  type PulledPiece,
} from '../../../src/statistics/weakest-link/index.ts';
import { brokenAt } from './reference-pieces.ts';

const usual = { pitch_mm: 24, lengths_m: [1, 100], confidence: 0.9, seed: 1, resamples: 200 };

function find(pieces: readonly PulledPiece[], more: Partial<LongChainAsked> = {}) {
  return longChain({ ...usual, pieces, ...more });
}

function held(force_kN: number): PulledPiece {
  return { links: 5, force_kN, mode: null, isAtLeast: true };
}

/** Every number in a finding, so that none of them is NaN or endless. */
function assertFinite(value: unknown, path = 'finding'): void {
  if (typeof value === 'number') assert.ok(Number.isFinite(value), `${path} is ${value}`);
  else if (Array.isArray(value)) for (const [k, one] of value.entries()) assertFinite(one, `${path}[${k}]`);
  else if (value !== null && typeof value === 'object') {
    for (const [key, one] of Object.entries(value)) assertFinite(one, `${path}.${key}`);
  }
}

const weakWelds = [...brokenAt([34.1, 33.2, 34.9, 33.9], 'bar', 5), ...brokenAt([30.2], 'weld', 5)];

test('one weld break in five pieces makes the weld govern over 100 m, and the finding says so', () => {
  const finding = find(weakWelds);
  assertFinite(finding);
  const [short, long] = finding.lengths;
  assert.equal(finding.modes[0]?.mode, 'bar');
  assert.equal(long?.shares[0]?.mode, 'weld');
  assert.match(finding.sentence, /over 100 m the weld is the weakest link/);
  assert.match(finding.warning ?? '', /1 of 5 pieces broke in the mode that governs \(weld\)/);
  assert.ok((short?.exceeded[0]?.bound_kN ?? 0) > (long?.exceeded[0]?.bound_kN ?? 0));
});

test('bounds lie below estimates, the 99 % force below the 95 % force, and both fall with length', () => {
  const { curve } = find(weakWelds);
  for (const [k, chain] of curve.entries()) {
    const [often, nearlyAlways] = chain.exceeded;
    assert.ok((often?.bound_kN ?? 0) < (often?.estimate_kN ?? 0));
    assert.ok((nearlyAlways?.bound_kN ?? 0) < (often?.bound_kN ?? 0));
    const before = curve[k - 1]?.exceeded[0];
    if (before) assert.ok((often?.bound_kN ?? 0) < before.bound_kN);
  }
  assert.equal(curve[0]?.links, 1);
  assert.ok(Math.abs((curve.at(-1)?.length_m ?? 0) - 500) < 0.024);
});

test('the same question has the same answer, to the last digit', () => {
  assert.deepEqual(find(weakWelds), find(weakWelds));
});

test('a mode that was looked for and not seen lowers the bound, and the bound without it is told', () => {
  const bar = brokenAt([34.1, 33.2, 34.9, 33.9, 34.4], 'bar', 5);
  const seen = find(bar).lengths[1]?.exceeded[0];
  const looked = find(bar, { modes: ['bar', 'weld'] });
  const both = looked.lengths[1]?.exceeded[0];
  assert.equal(looked.unseen[0]?.mode, 'weld');
  assert.equal(both?.boundOfSeenModes_kN, seen?.bound_kN);
  assert.ok((both?.bound_kN ?? 0) < (seen?.bound_kN ?? 0));
  assert.equal(both?.estimate_kN, seen?.estimate_kN);
  assert.match(looked.sentence, /No piece broke in the weld/);
});

test('a proof force that all chains hold is held with a chance near one, one beyond the pieces with a chance near none', () => {
  const holding = find(weakWelds, { forces_kN: [5, 40] }).lengths[1]?.holding;
  assert.ok((holding?.[0]?.bound ?? 0) > 0.99);
  assert.ok((holding?.[1]?.estimate ?? 1) < 1e-9);
});

test('without a prior there is an estimate and a bound when each mode broke twice or more, else neither', () => {
  const two = [...brokenAt([34.1, 33.2, 34.9], 'bar', 5), ...brokenAt([31.2, 32.2], 'weld', 5)];
  const free = find(two).lengths[1]?.exceeded[0]?.priorFree;
  assert.ok(free && (free.bootstrapBound_kN ?? 0) < free.estimate_kN);
  assert.equal(free.profileBound_kN, null);
  assert.equal(find(weakWelds).lengths[1]?.exceeded[0]?.priorFree, null);
  const alone = find(brokenAt([34.1, 33.2, 34.9], 'bar', 5)).lengths[1]?.exceeded[0]?.priorFree;
  assert.ok(alone && (alone.profileBound_kN ?? 0) < alone.estimate_kN);
});

const degenerate: readonly (readonly [string, readonly PulledPiece[], RegExp])[] = [
  ['no piece', [], /No piece was pulled/],
  ['only forces of zero', [{ ...held(0) }], /force of zero/],
  ['one piece', brokenAt([34], 'bar', 5), /Only 1 piece/],
  ['two pieces', brokenAt([34, 35], 'bar', 5), /Only 2 pieces/],
  ['equal forces', brokenAt([34, 34, 34, 34], 'bar', 5), /All forces are equal/],
  ['all at least', [held(34), held(33), held(35)], /No piece broke in any mode/],
  ['no break read', brokenAt([34, 33, 35], 'bar', 5).map((one) => ({ ...one, mode: null })), /No break was read/],
  [
    'some breaks not read',
    [...weakWelds, { links: 5, force_kN: 33, mode: null, isAtLeast: false }],
    /1 breaks were not read/,
  ],
  ['forces in N', brokenAt([34_100, 33_200, 34_900], 'bar', 5), /were they in N\?/],
  ['forces in MN', brokenAt([0.0341, 0.0332, 0.0349], 'bar', 5), /were they in MN/],
  ['one force in N', brokenAt([34.1, 33_200, 34.9], 'bar', 5), /two units may be mixed/],
  [
    'the one break above a stopped pull',
    [held(30), held(31), ...brokenAt([35], 'weld', 5)],
    /no upper limit to the shape/,
  ],
  ['a zero among others', [...weakWelds, held(0)], /force of zero were left out/],
];

for (const [name, pieces, reason] of degenerate) {
  test(`${name}: what can be said, and why not more, with no number that is none`, () => {
    const finding = find(pieces);
    assertFinite(finding);
    assert.ok(
      finding.doubts.some((doubt) => reason.test(doubt)),
      finding.doubts.join(' | '),
    );
    assert.ok(finding.warning !== null && finding.sentence.length > 0);
  });
}

test('when nothing broke there is a bound and no estimate', () => {
  const long = find([held(34), held(33), held(35)]).lengths[1];
  assert.equal(long?.median_kN, null);
  assert.equal(long?.mean_kN, null);
  assert.deepEqual(long?.shares, []);
  assert.equal(long?.exceeded[0]?.estimate_kN, null);
  assert.ok((long?.exceeded[0]?.bound_kN ?? 0) > 0);
});

test('pieces of two lengths that do not fall by the weakest link raise a doubt, and ones that do do not', () => {
  const scatter = [0.97, 0.99, 1, 1.01, 1.02, 0.98, 1.005, 0.995];
  const short = brokenAt(
    scatter.map((part) => 34 * part),
    'bar',
    3,
  );
  const same = brokenAt(
    scatter.map((part) => 34 * part),
    'bar',
    300,
  );
  const weaker = brokenAt(
    scatter.map((part) => 34 * 100 ** (-1 / 70) * part),
    'bar',
    300,
  );
  const doubted = (pieces: readonly PulledPiece[]) =>
    find(pieces).doubts.some((doubt) => /as the weakest link would have it/.test(doubt));
  assert.equal(doubted([...short, ...same]), true);
  assert.equal(doubted([...short, ...weaker]), false);
});

test('mean and scatter of the pieces as pulled leave out what is only at least', () => {
  const { pulled } = find([...brokenAt([30, 32], 'bar', 5), held(99), ...brokenAt([28], 'weld', 11)]);
  assert.deepEqual(
    pulled.map(({ links, broke, atLeast, mean_kN }) => ({ links, broke, atLeast, mean_kN })),
    [
      { links: 5, broke: 2, atLeast: 1, mean_kN: 31 },
      { links: 11, broke: 1, atLeast: 0, mean_kN: 28 },
    ],
  );
});

test('any pieces lead to finite numbers and ordered bounds', () => {
  const piece = fc.record({
    links: fc.integer({ min: 1, max: 20 }),
    force_kN: fc.double({ min: 1, max: 90, noNaN: true }),
    mode: fc.constantFrom('bar', 'weld', 'beside weld', null),
    isAtLeast: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 8 }), (pieces) => {
      const finding = find(pieces, { resamples: 20, lengths_m: [10] });
      assertFinite(finding);
      for (const { estimate_kN, bound_kN } of finding.lengths[0]?.exceeded ?? []) {
        if (estimate_kN !== null) assert.ok(bound_kN <= estimate_kN);
      }
    }),
    { seed: 7, numRuns: 40 },
  );
});

test('breaks in and beside the weld are one cause in words', () => {
  const pieces = [
    ...brokenAt([45, 46.5], 'bar', 5),
    ...brokenAt([43.7, 42.1], 'beside weld', 5),
    ...brokenAt([44.3], 'weld', 5),
  ];
  assert.match(
    find(pieces).sentence,
    /The weld or the steel beside it will govern: nearly all such 100 m chains would part there\./,
  );
});

test('a bound that counts on one mode alone says so, and no longer when the others are looked for', () => {
  const bar = brokenAt([34.1, 33.2, 34.9, 33.9, 34.4], 'bar', 5);
  const counts = (more: Partial<LongChainAsked>) =>
    find(bar, more).doubts.some((doubt) => /the only way to break/.test(doubt));
  assert.equal(counts({}), true);
  assert.equal(counts({ modes: ['bar', 'weld'] }), false);
});

test('what cannot be meant is refused', () => {
  assert.throws(() => find(weakWelds, { pitch_mm: 0 }), RangeError);
  assert.throws(() => find(weakWelds, { confidence: 1 }), RangeError);
  assert.throws(() => find(weakWelds, { lengths_m: [-1] }), RangeError);
  assert.throws(() => find([{ links: 0, force_kN: 3, mode: 'bar', isAtLeast: false }]), RangeError);
  assert.throws(() => find([{ links: 5, force_kN: Number.NaN, mode: 'bar', isAtLeast: false }]), RangeError);
});

test('crown and shank are bar, a break in the grip is no break of the chain', () => {
  assert.deepEqual(['crown', 'shank', 'weld', 'beside weld', 'in grip'].map(breakModeOf), [
    'bar',
    'bar',
    'weld',
    'beside weld',
    null,
  ]);
});
