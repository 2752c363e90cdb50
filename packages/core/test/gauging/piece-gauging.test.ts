import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { nominalArea_mm2 } from '../../src/chain/index.ts';
import { isInputError } from '../../src/errors.ts';
import {
  type GaugingInput,
  type GaugingInstrument,
  gaugePiece,
  repeatabilityOf,
  takeOffZinc,
} from '../../src/gauging/index.ts';

const calliper: GaugingInstrument = {
  instrument: 'calliper',
  resolution_mm: 0.01,
  calibrationUncertainty_mm: 0.02,
  coverageFactor: 2,
};

function reading(link: number | null, value_mm: number, rest: Partial<GaugingInput> = {}): GaugingInput {
  return {
    link,
    position: rest.quantity === undefined || rest.quantity === 'diameter' ? 'leg' : 'link',
    quantity: 'diameter',
    direction: 1,
    value_mm,
    overLinks: null,
    instrument: 'calliper',
    by: 'first reader',
    ...rest,
  };
}

function gauge(readings: readonly GaugingInput[], nominalSize_mm = 8, instruments = [calliper]) {
  return gaugePiece({ readings, instruments, nominalSize_mm });
}

const diameter = fc.double({ min: 2, max: 60, noNaN: true });

test('a round bar of the nominal size has the nominal area', () => {
  fc.assert(
    fc.property(diameter, (d) => {
      const gauging = gauge([reading(1, d), reading(1, d, { direction: 2 })], d);
      assert.ok(Math.abs((gauging.steelArea_mm2 ?? 0) / nominalArea_mm2(d) - 1) < 1e-12);
      assert.equal(gauging.nominalArea_mm2, nominalArea_mm2(d));
      assert.equal(gauging.outOfRound_mm, 0);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('all lengths twice as large give four times the area and twice the uncertainty with it', () => {
  fc.assert(
    fc.property(fc.array(diameter, { minLength: 2, maxLength: 12 }), (diameters) => {
      const take = (factor: number) =>
        gauge(
          diameters.map((d, index) => reading(Math.floor(index / 2) + 1, d * factor, { direction: (index % 2) + 1 })),
          8 * factor,
          [{ ...calliper, resolution_mm: 0.01 * factor, calibrationUncertainty_mm: 0.02 * factor }],
        );
      const [once, twice] = [take(1), take(2)];
      near(twice.steelArea_mm2, 4 * Number(once.steelArea_mm2));
      near(twice.leastSteelArea_mm2, 4 * Number(once.leastSteelArea_mm2));
      near(twice.steelAreaUncertainty_mm2, 4 * Number(once.steelAreaUncertainty_mm2));
      near(twice.quantities[0]?.standardUncertainty_mm, 2 * Number(once.quantities[0]?.standardUncertainty_mm));
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('the order of the readings changes nothing but rounding', () => {
  fc.assert(
    fc.property(fc.array(diameter, { minLength: 2, maxLength: 10 }), (diameters) => {
      const readings = diameters.map((d, index) =>
        reading(Math.floor(index / 2) + 1, d, { direction: (index % 2) + 1 }),
      );
      const [forward, backward] = [gauge(readings), gauge([...readings].reverse())];
      near(backward.steelArea_mm2, Number(forward.steelArea_mm2));
      near(backward.steelAreaUncertainty_mm2, Number(forward.steelAreaUncertainty_mm2));
      assert.equal(backward.outOfRound_mm, forward.outOfRound_mm);
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('an oval bar has the area of its ellipse, and the least link is told beside the mean', () => {
  const gauging = gauge([
    reading(1, 8.2),
    reading(1, 7.8, { direction: 2 }),
    reading(2, 7.5),
    reading(2, 7.6, { direction: 2 }),
  ]);
  near(gauging.leastSteelArea_mm2, (Math.PI / 2) * 7.5 * 7.6);
  near(gauging.steelArea_mm2, (Math.PI / 2) * ((8.2 * 7.8 + 7.5 * 7.6) / 2));
  near(gauging.outOfRound_mm, 8.2 - 7.8);
});

test('the uncertainty of one reading is calibration and resolution in squares (JCGM 100:2008 4.3)', () => {
  const gauging = gauge([reading(1, 8), reading(2, 8.1)]);
  near(gauging.quantities[0]?.standardUncertainty_mm, Math.hypot(0.02 / 2, 0.01 / (2 * Math.sqrt(3))));
});

test('the area uncertainty agrees with a numerical propagation through the same model', () => {
  const values = [8.05, 7.93, 8.11, 7.98];
  const build = (diameters: readonly number[]) =>
    diameters.map((d, index) => reading(Math.floor(index / 2) + 1, d, { direction: (index % 2) + 1 }));
  const area = (diameters: readonly number[]) => Number(gauge(build(diameters)).steelArea_mm2);
  const h = 1e-5;
  const slopes = values.map(
    (_, at) =>
      (area(values.map((d, index) => (index === at ? d + h : d))) -
        area(values.map((d, index) => (index === at ? d - h : d)))) /
      (2 * h),
  );
  const common = slopes.reduce((sum, slope) => sum + slope * 0.01, 0);
  const random = slopes.map((slope) => slope * (0.01 / (2 * Math.sqrt(3))));
  const expected = Math.hypot(common, ...random);
  assert.ok(Math.abs(Number(gauge(build(values)).steelAreaUncertainty_mm2) / expected - 1) < 1e-6);
});

test('more links lessen the reading errors but never the calibration, which they share', () => {
  const many = Array.from({ length: 200 }, (_, link) => [reading(link, 8), reading(link, 8, { direction: 2 })]).flat();
  const u = Number(gauge(many).steelAreaUncertainty_mm2);
  const calibrationOnly = (2 * nominalArea_mm2(8) * 0.01) / 8;
  assert.ok(u >= calibrationOnly && u < calibrationOnly * 1.01);
});

test('repeat readings bring their scatter in, pooled within each place and not between places', () => {
  const readings = [reading(1, 8), reading(1, 8.02), reading(2, 9), reading(2, 9.02), reading(3, 7)];
  const repeatability = repeatabilityOf(readings);
  assert.equal(repeatability?.degreesOfFreedom, 2);
  near(repeatability?.sd_mm, 0.02 / Math.SQRT2);
  assert.equal(repeatabilityOf([reading(1, 8), reading(2, 8.02)]), null);
  const [quiet, scattered] = [gauge([reading(1, 8), reading(2, 9)]), gauge(readings)];
  assert.ok(
    Number(scattered.quantities[0]?.standardUncertainty_mm) > Number(quiet.quantities[0]?.standardUncertainty_mm),
  );
});

test('the worst readings carry their links, one reading has no scatter', () => {
  const [found] = gauge([reading(3, 8.2), reading(7, 7.7), reading(5, 8)]).quantities;
  assert.deepEqual([found?.greatestLink, found?.leastLink], [3, 7]);
  assert.equal(gauge([reading(1, 8)]).quantities[0]?.sd_mm, null);
});

test('lengths over 5 and over 11 links are not mixed', () => {
  const length = (value_mm: number, overLinks: number) =>
    reading(null, value_mm, { quantity: 'lengthOverLinks', position: 'piece', overLinks });
  const { quantities } = gauge([length(120.5, 5), length(264, 11), length(265, 11)]);
  assert.deepEqual(
    quantities.map(({ overLinks, readings }) => ({ overLinks, readings })),
    [
      { overLinks: 5, readings: 1 },
      { overLinks: 11, readings: 2 },
    ],
  );
});

test('without a calibration there is no uncertainty, and a note says for which instrument', () => {
  for (const instruments of [[], [{ ...calliper, calibrationUncertainty_mm: null }]]) {
    const gauging = gauge([reading(1, 8), reading(1, 8, { direction: 2 })], 8, instruments);
    assert.equal(gauging.steelAreaUncertainty_mm2, null);
    assert.equal(gauging.quantities[0]?.standardUncertainty_mm, null);
    assert.ok(
      gauging.notes.some((note) => note.includes('instrument calliper') || note.includes('Instrument calliper')),
    );
  }
});

test('a bar read in one direction is taken as round, and a note says so', () => {
  const gauging = gauge([reading(4, 8.1)]);
  near(gauging.steelArea_mm2, nominalArea_mm2(8.1));
  assert.equal(gauging.outOfRound_mm, null);
  assert.ok(gauging.notes.some((note) => note.includes('one direction only on link 4')));
});

test('only plain legs count for the steel area', () => {
  const crowns = gauge([reading(1, 8, { position: 'crown' })]);
  assert.equal(crowns.steelArea_mm2, null);
  assert.ok(crowns.notes.some((note) => note.includes('not known')));
  assert.deepEqual(gauge([]).notes, ['Nothing was gauged on this piece.']);
});

test('zinc comes off both sides of each diameter, and doubt about its thickness shifts all diameters at once', () => {
  const over = [reading(1, 8.17), reading(1, 8.17, { direction: 2 }), reading(1, 24, { quantity: 'pitch' })];
  const bare = takeOffZinc(over, 0.085);
  const known = gaugePiece({ readings: bare, instruments: [calliper], nominalSize_mm: 8 });
  near(known.steelArea_mm2, nominalArea_mm2(8));
  assert.equal(known.quantities.find(({ quantity }) => quantity === 'pitch')?.mean_mm, 24);
  const doubtful = gaugePiece({
    readings: bare,
    instruments: [calliper],
    nominalSize_mm: 8,
    zincThicknessUncertainty_mm: 0.008,
  });
  const added = (2 * nominalArea_mm2(8) * 0.016) / 8;
  near(doubtful.steelAreaUncertainty_mm2, Math.hypot(Number(known.steelAreaUncertainty_mm2), added));
});

const slips = [
  { what: 'ten times too large', value_mm: 80, quantity: 'diameter', says: /tenth/ },
  { what: 'ten times too small', value_mm: 0.8, quantity: 'diameter', says: /ten times/ },
  { what: 'in inches', value_mm: 0.945, quantity: 'pitch', says: /inches/ },
  { what: 'of another size', value_mm: 12, quantity: 'diameter', says: /nominal size/ },
] as const;
for (const { what, value_mm, quantity, says } of slips) {
  test(`a reading ${what} is kept and noted`, () => {
    const gauging = gauge([reading(1, value_mm, { quantity })]);
    assert.equal(gauging.quantities[0]?.mean_mm, value_mm);
    assert.ok(
      gauging.notes.some((note) => says.test(note) && note.includes(quantity) && note.includes('kept')),
      gauging.notes.join('\n'),
    );
  });
}

test('pitch and inside width entered in each other’s place are noted once, as a pair', () => {
  const doubts = gauge([
    reading(2, 9.6, { quantity: 'pitch' }),
    reading(2, 24, { quantity: 'innerWidth' }),
    reading(3, 24, { quantity: 'pitch' }),
  ]).notes.filter((note) => note.includes('pitch'));
  assert.equal(doubts.length, 1);
  assert.match(doubts[0] ?? '', /link 2: pitch and innerWidth .* look swapped/);
});

test('readings of sound chain raise no doubt', () => {
  const chain = [
    reading(1, 8.05),
    reading(1, 7.98, { direction: 2 }),
    reading(1, 8.6, { quantity: 'weldDiameter', position: 'weld' }),
    reading(1, 24.1, { quantity: 'pitch' }),
    reading(1, 10.6, { quantity: 'innerWidth' }),
    reading(1, 27.8, { quantity: 'outerWidth' }),
    reading(1, 40.1, { quantity: 'outerLength' }),
    reading(null, 264, { quantity: 'lengthOverLinks', position: 'piece', overLinks: 11 }),
  ];
  assert.deepEqual(gauge(chain).notes, []);
});

test('every row that is no length is named at once, and nothing is kept', () => {
  const rows = [
    reading(1, 8),
    reading(1, Number.NaN),
    reading(2, 0),
    reading(3, -8),
    reading(null, 264, { quantity: 'lengthOverLinks', position: 'piece' }),
  ];
  assert.throws(
    () => gauge(rows),
    (error) => {
      assert.ok(isInputError(error) && error.code === 'gauging/readings');
      for (const row of [2, 3, 4, 5]) assert.match(error.message, new RegExp(`reading ${row} `));
      assert.doesNotMatch(error.message, /reading 1 /);
      return true;
    },
  );
  assert.throws(() => gauge([reading(1, 8)], 0), isInputError);
});

/** Equal but for the last digits of binary arithmetic. */
function near(found: number | null | undefined, expected: number): void {
  assert.ok(
    typeof found === 'number' && Math.abs(found - expected) <= 1e-9 * Math.abs(expected),
    `${found}, expected ${expected}`,
  );
}
