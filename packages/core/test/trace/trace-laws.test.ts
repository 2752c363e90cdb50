import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { cellValue } from '../../src/trace/cell-value.ts';
import { parseTrace, readSignals, thinCurve } from '../../src/trace/index.ts';
import { differenceNoise } from '../../src/trace/noise.ts';
import { scanNumber } from '../../src/trace/number-scanner.ts';
import { medianOf, quantileOf } from '../../src/trace/order-statistic.ts';
import { studentFactor95 } from '../../src/trace/student-factor.ts';
import { noisy, seededNormal, simulatePull, thinned } from './pull-simulator.ts';
import { asText, latin1, utf8, utf16 } from './trace-text.ts';

const pull = simulatePull({ dips: [{ at_mm: 9, drop_kN: 2.5 }] });
const record = thinned(pull.signals, 20);
const reading = readSignals(record, { links: 5, pitch_mm: 24 });

const place = { row: 1, column: 1, name: 'x' };

test('the number scanner, where it takes a text, is Number() to the last bit; what it leaves, the slow road reads', () => {
  const digits = (most: number) => fc.string({ unit: fc.constantFrom(...'0123456789'), maxLength: most });
  const decimals = fc
    .tuple(fc.constantFrom('', '-', '+'), digits(14), digits(14))
    .map(([sign, whole, part]) => `${sign}${whole}.${part}`);
  const written = fc.oneof(
    decimals,
    fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    fc.integer().map(String),
  );
  const property = fc.property(written, (text) => {
    if (!/\d/.test(text)) return;
    const state = { at: 0 };
    const quick = scanNumber(utf8(`${text};`), 0, 46, state);
    if (state.at === text.length) assert.ok(Object.is(quick, Number(text)), `${text}: ${quick}`);
    else assert.ok(Object.is(cellValue(text, '.', false, place), Number(text)), text);
  });
  fc.assert(property, { seed: 7, numRuns: 3000 });
});

test('plain numbers of up to fifteen digits need no slow road', () => {
  const property = fc.property(
    fc.integer({ min: 0, max: 999_999_999_999_999 }),
    fc.integer({ min: 0, max: 15 }),
    (whole, places) => {
      const text = String(whole).padStart(places + 1, '0');
      const written = places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
      const state = { at: 0 };
      assert.ok(Object.is(scanNumber(utf8(`${written}\t`), 0, 46, state), Number(written)), written);
      assert.equal(state.at, written.length);
    },
  );
  fc.assert(property, { seed: 7, numRuns: 1000 });
});

test('scaling the force scales every force of the reading and leaves times and shares alone', () => {
  const property = fc.property(fc.double({ min: 0.05, max: 50, noNaN: true }), (factor) => {
    const scaled = readSignals(
      { ...record, force_kN: record.force_kN.map((force) => force * factor) },
      { links: 5, pitch_mm: 24 },
    );
    for (const key of [
      'maximumForce_kN',
      'partingForce_kN',
      'stiffness_kN_per_mm',
      'kneeForce_kN',
      'forceRate_kN_per_s',
      'energyToParting_J',
    ] as const) {
      assert.ok(Math.abs((scaled[key] ?? 0) / (factor * (reading[key] ?? Number.NaN)) - 1) < 1e-6, key);
    }
    assert.equal(scaled.timeAtMaximum_s, reading.timeAtMaximum_s);
    assert.equal(scaled.timeAtParting_s, reading.timeAtParting_s);
    assert.equal(scaled.events.length, reading.events.length);
  });
  fc.assert(property, { seed: 7, numRuns: 25 });
});

test('a spike anywhere never changes the maximum by more than the noise', () => {
  const quiet = noisy(record, 0.0005, 5);
  for (const signals of [record, quiet]) {
    const before = readSignals(signals);
    const property = fc.property(
      fc.integer({ min: 5, max: 3000 }),
      fc.double({ min: -40, max: 40, noNaN: true }),
      (at, size) => {
        const force_kN = signals.force_kN.slice();
        force_kN[at] = (force_kN[at] ?? 0) + size;
        const after = readSignals({ ...signals, force_kN });
        const moved = Math.abs((after.maximumForce_kN ?? 0) - (before.maximumForce_kN ?? 0));
        // Eight standard deviations of the noise (13 N here) or the six usual steps that a spike may hide in.
        assert.ok(moved <= 8 * (before.noise_kN ?? 0) + 0.03, `${size} kN at ${at} moved it by ${moved}`);
      },
    );
    fc.assert(property, { seed: 7, numRuns: 60 });
  }
});

test('encoding, delimiter, decimal sign and line end do not touch the signals', () => {
  const short = thinned(record, 20);
  const plain = parseTrace(utf8(asText(short)));
  const encoders = [
    utf8,
    latin1,
    (text: string) => utf16(text, true, true),
    (text: string) => utf16(text, false, false),
  ];
  const signs = fc.constantFrom(
    { delimiter: ',', decimal: '.' as const },
    { delimiter: ';', decimal: ',' as const },
    { delimiter: '\t', decimal: ',' as const },
    { delimiter: '\t', decimal: '.' as const },
    { delimiter: '  ', decimal: ',' as const },
  );
  const property = fc.property(
    fc.constantFrom(...encoders),
    signs,
    fc.constantFrom('\n', '\r\n', '\r'),
    (encode, sign, lineEnd) => {
      const read = parseTrace(encode(asText(short, { ...sign, lineEnd })));
      assert.deepEqual(read.force_kN, plain.force_kN);
      assert.deepEqual(read.time_s, plain.time_s);
    },
  );
  fc.assert(property, { seed: 7, numRuns: 60 });
});

test('any bytes are read or refused with an InputError, never with another error', () => {
  const letters = fc.constantFrom(...'0123456789.,;\t \n\r-+eE:[]()kNsm"nan');
  const property = fc.property(fc.string({ unit: letters, maxLength: 200 }), (tail) => {
    try {
      parseTrace(utf8(`time [s];force [kN]\n0;1\n1;2\n${tail}`));
    } catch (error) {
      assert.equal((error as Error).name, 'InputError', String(error));
    }
  });
  fc.assert(property, { seed: 7, numRuns: 500 });
});

test('a thinned curve keeps first, last, lowest and highest, in order, in about the points asked for', () => {
  const property = fc.property(
    fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 1, maxLength: 400 }),
    fc.integer({ min: 4, max: 60 }),
    (values, points) => {
      const y = Float64Array.from(values);
      const x = y.map((_, i) => i);
      const thin = thinCurve(x, y, points);
      assert.ok(thin.x.length <= Math.max(points + 2, 4));
      assert.equal(thin.x[0], 0);
      assert.equal(thin.x.at(-1), values.length - 1);
      assert.equal(Math.max(...thin.y), Math.max(...values));
      assert.equal(Math.min(...thin.y), Math.min(...values));
      assert.ok(thin.x.every((each, i) => i === 0 || each > (thin.x[i - 1] ?? 0)));
    },
  );
  fc.assert(property, { seed: 7, numRuns: 200 });
});

test('a quantile is the order statistic', () => {
  const property = fc.property(
    fc.array(fc.double({ noNaN: true }), { minLength: 1 }),
    fc.double({ min: 0, max: 1, noNaN: true }),
    (values, share) => {
      const sorted = Float64Array.from(values).sort();
      assert.equal(
        quantileOf(Float64Array.from(values), share),
        sorted[Math.min(values.length - 1, Math.floor(share * values.length))],
      );
      assert.equal(medianOf(Float64Array.from(values)), sorted[values.length >> 1]);
    },
  );
  fc.assert(property, { seed: 7, numRuns: 200 });
});

test('the noise of white noise on a curve is its standard deviation within 3 %, spikes or not', () => {
  const normal = seededNormal(9);
  const values = Float64Array.from(
    { length: 20_000 },
    (_, i) => 30 * Math.sin(i / 4000) + 0.1 * normal() + (i % 200 === 0 ? 50 : 0),
  );
  assert.ok(Math.abs(differenceNoise(values, 0, values.length) / 0.1 - 1) < 0.03);
});

test("Student's factor falls from that of few to that of many", () => {
  // Anchors: t tables as in any handbook of statistics (memory): 5 -> 2.571, 30 -> 2.042, infinity -> 1.960.
  assert.ok(Math.abs(studentFactor95(5) - 2.571) < 0.003);
  assert.ok(Math.abs(studentFactor95(30) - 2.042) < 0.001);
  assert.ok(Math.abs(studentFactor95(1e9) - 1.96) < 0.0001);
});
