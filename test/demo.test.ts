import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { consistencyFaults, readSheet, type Sheet, type TableName, tables } from '@provinghouse/contract';
import { parse } from 'csv-parse/sync';
import { makeDemo } from '../examples/make/main.ts';

const examples = join(import.meta.dirname, '../examples');
const kept = join(examples, 'sallow-reach');

interface PieceTruth {
  readonly pull: string;
  readonly piece: string;
  readonly maximumForce_kN: number;
  readonly timeAtMaximum_s: number;
  readonly timeAtParting_s: number;
  readonly recordShowsParting: boolean;
  readonly clipped: boolean;
  readonly elongation_pct: number;
  readonly position: string;
  readonly barDiameter_mm: readonly number[];
  readonly jumps: readonly { readonly kind: string; readonly force_kN: number }[];
  readonly pauses: readonly { readonly to_s: number; readonly from_kN: number }[];
}

const truth: readonly PieceTruth[] = JSON.parse(readFileSync(join(examples, 'sallow-reach-truth.json'), 'utf8')).pieces;
const of = (product: string) => truth.filter((piece) => piece.piece.startsWith(product));
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Least breaking force of the published tables, from the rulebook's own copy of them. */
function minimumForce_kN(standard: string, column: string, size_mm: number): number {
  const book = JSON.parse(
    readFileSync(join(examples, '../packages/core/src/chain/tables/chain-standards.json'), 'utf8'),
  ) as { standards: { id: string; tables: { rows: Record<string, number>[] }[] }[] };
  const rows = book.standards.find((s) => s.id === standard)?.tables.flatMap((t) => t.rows) ?? [];
  const force = rows.find((row) => row.d === size_mm)?.[column];
  assert.ok(force, `${standard} has no ${column} for ${size_mm} mm`);
  return force;
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();
}

let made = '';
before(() => {
  made = mkdtempSync(join(tmpdir(), 'demo-'));
  makeDemo(made);
});
after(() => rmSync(made, { recursive: true, force: true }));

test('making the demonstration again gives the kept files, byte for byte', () => {
  assert.deepEqual(filesBelow(join(made, 'sallow-reach')), filesBelow(kept));
  for (const path of [...filesBelow(kept).map((file) => `sallow-reach/${file}`), 'sallow-reach-truth.json']) {
    assert.ok(readFileSync(join(made, path)).equals(readFileSync(join(examples, path))), `${path} differs`);
  }
});

test('the descriptor states size and hash of every file', () => {
  const { resources } = JSON.parse(readFileSync(join(kept, 'datapackage.json'), 'utf8')) as {
    resources: { path: string; bytes: number; hash: string }[];
  };
  assert.deepEqual([...resources.map((r) => r.path), 'datapackage.json'].sort(), filesBelow(kept));
  for (const { path, bytes, hash } of resources) {
    const content = readFileSync(join(kept, path));
    assert.equal(content.length, bytes, path);
    assert.equal(`sha256:${createHash('sha256').update(content).digest('hex')}`, hash, path);
  }
});

test('no table of the demonstration has a fault, in itself or against the others', () => {
  const files = new Set(filesBelow(kept));
  const sheets: Partial<Record<TableName, Sheet>> = {};
  for (const name of Object.keys(tables) as TableName[]) {
    const records: string[][] = files.has(`${name}.csv`) ? parse(readFileSync(join(kept, `${name}.csv`))) : [];
    sheets[name] = records.length > 0 ? readSheet(tables[name], records) : { rows: [], faults: [] };
    assert.deepEqual(sheets[name]?.faults, [], name);
  }
  assert.deepEqual(consistencyFaults({ sheets, files }), []);
});

test('Birch passes every minimum, yet three of five part in or beside the weld, and lower than the others', () => {
  const minimum_kN = minimumForce_kN('EN 818-3', 'breakingForce', 8);
  const birch = of('BIRCH');
  const welds = birch.filter((p) => p.position === 'weld' || p.position === 'beside weld');
  const bars = birch.filter((p) => !welds.includes(p));
  assert.equal(welds.length, 3);
  assert.ok(birch.every((p) => p.maximumForce_kN > minimum_kN));
  assert.ok(Math.max(...welds.map((p) => p.maximumForce_kN)) < Math.min(...bars.map((p) => p.maximumForce_kN)));
});

test('Ash and Birch, and Damson and Fir, cannot be told apart by their means', () => {
  for (const [a, b] of [
    ['ASH', 'BIRCH'],
    ['DAMSON', 'FIR'],
  ] as const) {
    const [x, y] = [complete(a), complete(b)];
    const error = Math.sqrt(variance(x) / x.length + variance(y) / y.length);
    assert.ok(Math.abs(mean(x) - mean(y)) < error, `${a} against ${b}`);
  }
});

function complete(product: string): number[] {
  return of(product)
    .filter((p) => p.recordShowsParting && !p.clipped && p.position !== 'in grip')
    .map((p) => p.maximumForce_kN);
}

function variance(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + (value - mean(values)) ** 2, 0) / (values.length - 1);
}

test('Cedar passes its minimum by the bar being fat: on a bar of its nominal size the same steel would not reach it', () => {
  const minimum_kN = minimumForce_kN('ISO 4565', 'breakingForce30', 8);
  const cedar = of('CEDAR');
  assert.ok(cedar.every((p) => p.maximumForce_kN > minimum_kN));
  const atNominal_kN = cedar.map((p) => p.maximumForce_kN * (8 / mean(p.barDiameter_mm)) ** 2);
  assert.ok(Math.max(...atNominal_kN) < minimum_kN);
});

test('Elder stands on its limit: one clearly below, two within one per cent of it, one short of 20 % elongation', () => {
  const minimum_kN = minimumForce_kN('EN 818-3', 'breakingForce', 10);
  const ratios = of('ELDER').map((p) => p.maximumForce_kN / minimum_kN);
  assert.equal(ratios.filter((r) => r < 0.985).length, 1);
  assert.equal(ratios.filter((r) => Math.abs(r - 1) < 0.01).length, 2);
  assert.equal(of('ELDER').filter((p) => p.elongation_pct < 20).length, 1);
});

test('Fir has one break in the grip, one record cut off, one clipped; no other product has any', () => {
  const odd = (pieces: readonly PieceTruth[]) => ({
    inGrip: pieces.filter((p) => p.position === 'in grip').length,
    cutOff: pieces.filter((p) => !p.recordShowsParting).length,
    clipped: pieces.filter((p) => p.clipped).length,
  });
  assert.deepEqual(odd(of('FIR')), { inGrip: 1, cutOff: 1, clipped: 1 });
  assert.deepEqual(odd(truth.filter((p) => !p.piece.startsWith('FIR'))), { inGrip: 0, cutOff: 0, clipped: 0 });
});

test('where the hand eased the valve the true maximum comes later and is higher', () => {
  const paused = truth.flatMap((p) => p.pauses.map((pause) => ({ p, pause })));
  assert.ok(paused.length >= 2);
  for (const { p, pause } of paused) {
    assert.ok(p.timeAtMaximum_s > pause.to_s && p.maximumForce_kN > pause.from_kN, p.piece);
  }
});

test('chains part soon after their maximum, at believable elongations', () => {
  for (const p of truth) {
    assert.ok(p.timeAtParting_s >= p.timeAtMaximum_s && p.timeAtParting_s - p.timeAtMaximum_s < 5, p.piece);
    assert.ok(p.elongation_pct > 15 && p.elongation_pct < 35, p.piece);
  }
});
