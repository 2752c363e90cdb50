import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readSignals, type TraceReading, type WatchSample } from '@provinghouse/core';
import { type PracticePull, practicePull, variedPractice } from '../../src/practice/index.ts';

const column = { name: 'practice', unit: 'kN', because: 'named by the test' };

/** What the reader of traces makes of samples, told only what a bench would know: class and resolution of the rig. */
function readingOf(samples: readonly WatchSample[], resolution_kN: number): TraceReading {
  return readSignals(
    {
      time_s: Float64Array.from(samples, (s) => s.time_s),
      force_kN: Float64Array.from(samples, (s) => s.force_kN),
      table_mm: Float64Array.from(samples, (s) => s.table_mm ?? Number.NaN),
      extension_mm: null,
      columns: { time: null, force: column, table: null, extension: null },
    },
    { rig: { classPct: 0.5, resolution_kN } },
  );
}

interface Finding {
  readonly seed: number;
  readonly pull: PracticePull;
  readonly reading: TraceReading;
  readonly off_kN: number;
  readonly allowed_kN: number;
  /** Zero that the reader left in the forces, saying so, since a flat start could be a preload; 0 where it took it off. */
  readonly leftIn_kN: number;
  readonly slack_mm: number;
}

const pulls = Array.from({ length: 50 }, (_, i) => {
  const options = { ...variedPractice(i + 1), rate_Hz: 1000 };
  return { options, whole: practicePull(options) };
});

/** The same fifty pulls at a lower rate: each k-th sample, as a slower recorder would have taken it. */
function findingsAt(rate_Hz: number): Finding[] {
  return pulls.map(({ options, whole }) => {
    const pull = { ...whole, samples: whole.samples.filter((_, i) => i % (1000 / rate_Hz) === 0) };
    const reading = readingOf(pull.samples, options.rig?.resolution_kN ?? 0);
    const isLeftIn = reading.zeroForce_kN === null && reading.notes.some((note) => note.includes('may be a preload'));
    return {
      seed: options.seed,
      pull,
      reading,
      off_kN: (reading.maximumForce_kN ?? Number.NaN) - pull.truth.maximumForce_kN,
      allowed_kN: 2 * (reading.maximumForceUncertainty_kN ?? Number.NaN),
      slack_mm: options.chain?.slack_mm ?? 0,
      leftIn_kN: isLeftIn ? pull.truth.transducer.zero_kN : 0,
    };
  });
}

for (const rate_Hz of [10, 100, 1000]) {
  const findings = findingsAt(rate_Hz);

  test(`${rate_Hz} Hz: the reader’s maximum is the true one within its expanded uncertainty (k = 2), 50 pulls of 50`, () => {
    for (const { seed, off_kN, allowed_kN, leftIn_kN } of findings) {
      assert.ok(Math.abs(off_kN - leftIn_kN) <= allowed_kN, `seed ${seed}: ${off_kN} kN off, ${allowed_kN} allowed`);
    }
  });

  test(`${rate_Hz} Hz: the zero is left in, and said to be, only where slack was less than a twentieth of the travel`, () => {
    for (const { seed, pull, slack_mm } of findings.filter((f) => f.leftIn_kN !== 0)) {
      const atMaximum = pull.samples.find((s) => s.time_s >= pull.truth.timeAtMaximum_s);
      // The reader's rule is 5 % of the travel to the maximum, both ends taken from noisy samples.
      assert.ok(slack_mm < 0.055 * (atMaximum?.table_mm ?? 0), `seed ${seed}: ${slack_mm} mm of slack`);
    }
  });

  test(`${rate_Hz} Hz: every parting is found, at its time within two samples and the lag of the rig`, () => {
    for (const { seed, reading, pull } of findings) {
      assert.ok(reading.parted && !reading.maximumIsAtLeast, `seed ${seed}`);
      const late_s = Math.abs((reading.timeAtParting_s ?? Number.NaN) - (pull.truth.timeAtParting_s ?? 0));
      assert.ok(late_s <= 2 / rate_Hz + 0.1, `seed ${seed}: ${late_s} s`);
    }
  });
}
