import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { readTrace } from '../../src/trace/index.ts';

// Outside check: 24 tensile tests of steel with results published by others, see reference/open-traces/README.md (CC BY 4.0).
const folder = join(import.meta.dirname, '../reference/open-traces');

interface Published {
  readonly file: string;
  readonly area_mm2: number;
  readonly gaugeLength_mm: number;
  readonly rp02_MPa: number;
  readonly rm_MPa: number;
  readonly slope_MPa: number;
  readonly crossheadSpeed_mm_per_s: number;
}

function publishedResults(): Published[] {
  const [head = '', ...lines] = readFileSync(join(folder, 'published-results.csv'), 'utf8').trim().split(/\r?\n/);
  const names = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    const cell = (name: string): string => cells[names.indexOf(name)] ?? '';
    return {
      file: cell('file'),
      area_mm2: Number(cell('area_mm2')),
      gaugeLength_mm: Number(cell('gaugeLength_mm')),
      rp02_MPa: Number(cell('rp02_MPa')),
      rm_MPa: Number(cell('rm_MPa')),
      slope_MPa: Number(cell('slope_MPa')),
      crossheadSpeed_mm_per_s: Number(cell('crossheadSpeed_mm_per_s')),
    };
  });
}

const results = publishedResults().map((published) => {
  const { area_mm2, gaugeLength_mm } = published;
  const reading = readTrace(readFileSync(join(folder, published.file)), { area_mm2, gaugeLength_mm });
  const toStress = 1000 / area_mm2;
  const slope = (reading.stiffness_kN_per_mm ?? Number.NaN) * gaugeLength_mm * toStress;
  const interval = reading.stiffnessInterval95_kN_per_mm ?? { lower: Number.NaN, upper: Number.NaN };
  return {
    published,
    reading,
    strength: reading.meanStressAtMaximum_N_per_mm2 ?? Number.NaN,
    knee: (reading.kneeForce_kN ?? Number.NaN) * toStress,
    slope,
    slopeHalf: ((interval.upper - interval.lower) / 2) * gaugeLength_mm * toStress,
    speed: (reading.tableSpeed_mm_per_min ?? Number.NaN) / 60,
  };
});

type Measured = 'strength' | 'knee' | 'slope' | 'speed';
const PUBLISHED_AS = {
  strength: 'rm_MPa',
  knee: 'rp02_MPa',
  slope: 'slope_MPa',
  speed: 'crossheadSpeed_mm_per_s',
} as const;

/** Differences from the published value in %, file by file. */
function differences(measured: Measured): number[] {
  return results.map((each) => (each[measured] / each.published[PUBLISHED_AS[measured]] - 1) * 100);
}

function largest(values: readonly number[]): number {
  return values.reduce(
    (most, value) => Math.max(most, Number.isNaN(value) ? Number.POSITIVE_INFINITY : Math.abs(value)),
    0,
  );
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
}

test('the table of published, ours and difference', (context) => {
  assert.equal(results.length, 24);
  for (const measured of ['strength', 'knee', 'slope', 'speed'] as const) {
    const off = differences(measured);
    context.diagnostic(
      `${measured} against ${PUBLISHED_AS[measured]}: largest ${largest(off).toFixed(4)} %, median ${middle(off).toFixed(4)} %`,
    );
    results.forEach((each, i) => {
      const theirs = each.published[PUBLISHED_AS[measured]];
      context.diagnostic(
        `  ${each.published.file}  ${theirs.toPrecision(8)}  ${each[measured].toPrecision(8)}  ${(off[i] ?? 0).toFixed(4)} %`,
      );
    });
  }
});

test('tensile strength from the maximum force and the area is the published one within 0.001 %', () => {
  assert.ok(largest(differences('strength')) < 0.001);
});

test('the force at 0.2 % offset over the area is the published proof strength within 0.5 %', () => {
  assert.ok(largest(differences('knee')) < 0.5);
});

test('the elastic slope is the published one within 5 %, the median within 1.5 %', () => {
  assert.ok(largest(differences('slope')) < 5);
  assert.ok(Math.abs(middle(differences('slope'))) < 1.5);
  assert.ok(middle(differences('slope').map(Math.abs)) < 1.5);
});

// The published slope is itself an estimate on a stretch of its authors' choice, so fewer than 95 % must lie inside our interval.
test('the 95 % interval of the slope holds the published slope in at least three quarters of the tests', () => {
  const held = results.filter((each) => Math.abs(each.slope - each.published.slope_MPa) <= each.slopeHalf);
  assert.ok(held.length >= 18, `${held.length} of 24`);
});

test('the speed of the table is the published crosshead speed within 1.5 %', () => {
  assert.ok(largest(differences('speed')) < 1.5);
});

test('extensometer and machine travel are told apart, and nothing is taken for a spike', () => {
  for (const { reading } of results) {
    assert.equal(reading.columns.extension?.name, 'Displacement');
    assert.equal(reading.columns.table?.name, 'Machine Displacement');
    assert.equal(reading.travelFrom, 'extension');
    assert.equal(reading.spikes.length, 0);
  }
});

test('a record that stops while the piece necks has not parted, and its maximum is at least', () => {
  for (const { reading } of results) {
    assert.equal(reading.parted, false);
    assert.equal(reading.maximumIsAtLeast, true);
    assert.equal(reading.events.at(-1)?.kind, 'end of record');
  }
});

test('an agreed drop makes the maximum of a necking piece final', () => {
  const first = results[0];
  assert.ok(first);
  const { area_mm2, file } = first.published;
  const reading = readTrace(readFileSync(join(folder, file)), { area_mm2, agreedDrop_pct: 20 });
  assert.equal(reading.maximumIsAtLeast, false);
  assert.equal(reading.maximumForce_kN, first.reading.maximumForce_kN);
});
