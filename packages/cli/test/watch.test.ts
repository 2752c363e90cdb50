import assert from 'node:assert/strict';
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { readTrace } from '@provinghouse/core';
import { missing, startBroker } from '../../rig/test/practice/program.ts';
import { exampleAt } from '../../service/test/pull/how-to.ts';
import { provinghouse, withFolder } from './run-command.ts';

const bin = fileURLToPath(new URL('../bin/provinghouse.js', import.meta.url));

interface Line {
  readonly kind: string;
  readonly [name: string]: unknown;
}

/** A command that runs on, its lines read as they come. */
function running(...args: readonly string[]) {
  const child = spawn(process.execPath, [bin, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: Line[] = [];
  const reader = createInterface({ input: child.stdout });
  reader.on('line', (line) => lines.push(JSON.parse(line) as Line));
  return { child, lines, reader, ended: once(child, 'close') };
}

async function practice(child: { readonly reader: ReturnType<typeof running>['reader']; readonly lines: Line[] }) {
  while (child.lines.length === 0) await once(child.reader, 'line');
  return child.lines[0] as Line & { readonly address: string; readonly pattern: string };
}

function end(child: ChildProcess): void {
  if (child.exitCode === null) child.kill();
}

test('watch follows practice-rig from slack to parting, and the final reading agrees with the truth', () =>
  withFolder(async (folder) => {
    const rig = running('practice-rig', '--serve', 'tcp', '--seed', '7', '--speed', '60', '--ndjson');
    const serving = await practice(rig);
    const watch = running(
      ...['watch', '--source', serving.address, '--pattern', serving.pattern, '--free-clock', '--ndjson'],
      ...['--rules', '20.1,40.2', '--rig-class', '1', '--speed-window', '10,60', '--keep', folder],
    );
    try {
      assert.deepEqual(await watch.ended, [0, null]);
      assert.deepEqual(await rig.ended, [0, null]);
    } finally {
      end(watch.child);
      end(rig.child);
    }
    const of = (kind: string) => watch.lines.filter((line) => line.kind === kind);
    assert.equal(of('practice').length, 1);
    assert.deepEqual(
      of('rule').map(({ name }) => name),
      ['20.1 kN', '40.2 kN'],
    );
    const stages = of('stage').map(({ stage }) => stage);
    assert.equal(stages[0], 'slack');
    assert.equal(stages.at(-1), 'parted');
    assert.ok(of('readings').length > 5 && of('forecast').length > 0);

    const truth = rig.lines.find(({ kind }) => kind === 'truth') as unknown as { maximumForce_kN: number };
    const { reading, sha256, file } = watch.lines.at(-1) as unknown as {
      reading: { maximumForce_kN: number; maximumForceUncertainty_kN: number; parted: boolean };
      sha256: string;
      file: string;
    };
    assert.equal(reading.parted, true);
    const error = Math.abs(reading.maximumForce_kN - truth.maximumForce_kN);
    assert.ok(error <= 2 * reading.maximumForceUncertainty_kN, `${error} kN`);

    const [ended] = of('ended');
    assert.equal(ended?.sha256, sha256);
    const bytes = readFileSync(join(file));
    assert.match(bytes.toString('utf8'), /^# PRACTICE: simulated/);
    assert.equal(readTrace(bytes).samples, ended?.samples);
  }));

const places = {
  'serial lines': (address: string) => ({ path: address }),
  'modbus tcp': (address: string) => ({ host: '127.0.0.1', port: Number(new URL(address).port) }),
  mqtt: (address: string) => ({ broker: `mqtt://${new URL(address).host}` }),
} as const;

/** Watches a practice rig by the file of Kit that the page shows for its wire. */
async function watchedByKit(folder: string, kind: keyof typeof places, serve: readonly string[]) {
  const kit = join(folder, 'RIG.json');
  const start = () => running('practice-rig', ...serve, '--seed', '7', '--speed', '20', '--ndjson');
  const watchKit = () => running('watch', '--kit', kit, '--keep', folder, '--rig-class', '1', '--ndjson');
  // A broker does not wait for its readers, so with it the reader comes first.
  const broker = kind === 'mqtt' ? (serve.at(-1) ?? '') : null;
  const first = broker === null ? start() : null;
  const address = first === null ? `${broker}/practice-rig` : (await practice(first)).address;
  writeFileSync(kit, exampleAt(kind, places[kind](address)));
  const watch = watchKit();
  if (first === null) await setTimeout(1500);
  const rig = first ?? start();
  try {
    assert.deepEqual(await watch.ended, [0, null]);
    assert.deepEqual(await rig.ended, [0, null]);
  } finally {
    end(watch.child);
    end(rig.child);
  }
  return { lines: watch.lines, truth: rig.lines.find((line) => line.kind === 'truth') };
}

function agrees({ lines, truth }: Awaited<ReturnType<typeof watchedByKit>>): void {
  assert.equal(lines.filter(({ kind }) => kind === 'practice').length, 1);
  const { reading } = lines.at(-1) as unknown as {
    reading: { maximumForce_kN: number; maximumForceUncertainty_kN: number; parted: boolean };
  };
  assert.equal(reading.parted, true);
  const error = Math.abs(reading.maximumForce_kN - Number(truth?.maximumForce_kN));
  assert.ok(error <= 2 * reading.maximumForceUncertainty_kN, `${error} kN`);
}

test('watch follows practice-rig over a pty by a file of Kit', { skip: missing('socat') }, () =>
  withFolder(async (folder) => agrees(await watchedByKit(folder, 'serial lines', ['--serve', 'pty']))),
);

test('watch follows practice-rig over Modbus TCP by a file of Kit', () =>
  withFolder(async (folder) => agrees(await watchedByKit(folder, 'modbus tcp', ['--serve', 'modbus']))));

test('watch follows practice-rig over a Mosquitto by a file of Kit', { skip: missing('mosquitto') }, () =>
  withFolder(async (folder) => {
    const broker = await startBroker();
    try {
      agrees(await watchedByKit(folder, 'mqtt', ['--serve', 'mqtt', '--broker', broker.url]));
    } finally {
      await broker.stop();
    }
  }),
);

test('a source or a pattern that cannot be is told with its code, and nothing is waited for', () =>
  withFolder((folder) => {
    const faults = [
      [['--source', 'somewhere', '--pattern', '{force[kN]}'], 'source/address'],
      [['--source', 'tcp://127.0.0.1:1', '--pattern', 'F {force}'], 'source/unit-missing'],
      [['--source', 'tcp://127.0.0.1:1', '--pattern', 'F {force[kN]'], 'source/pattern'],
    ] as const;
    for (const [args, code] of faults) {
      const run = provinghouse(folder, 'watch', ...args, '--ndjson');
      assert.equal(run.code, 1, run.err);
      assert.equal((JSON.parse(run.err) as { error: { code: string } }).error.code, code);
    }
    assert.equal(provinghouse(folder, 'watch', '--source', 'tcp://127.0.0.1:1').code, 2);
    assert.equal(provinghouse(folder, 'watch', '--source', 'a', '--pattern', 'b', '--rules', '20,x').code, 2);
    assert.equal(provinghouse(folder, 'watch', '--kit', 'RIG.json', '--pattern', 'b').code, 2);
    const nowhere = provinghouse(folder, 'watch', '--kit', join(folder, 'NONE.json'), '--ndjson');
    assert.equal((JSON.parse(nowhere.err) as { error: { code: string } }).error.code, 'pull/kit');
    assert.equal(provinghouse(folder, 'practice-rig', '--serve', 'smoke').code, 2);
    assert.equal(provinghouse(folder, 'practice-rig', '--serve', 'tcp', '--seed', '1.5').code, 2);
  }));
