import assert from 'node:assert/strict';
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { readTrace } from '@provinghouse/core';
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
    assert.equal(provinghouse(folder, 'practice-rig', '--serve', 'smoke').code, 2);
    assert.equal(provinghouse(folder, 'practice-rig', '--serve', 'tcp', '--seed', '1.5').code, 2);
  }));
