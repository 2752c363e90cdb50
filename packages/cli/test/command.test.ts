import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { openTraces, provinghouse, withFolder } from './run-command.ts';

const names = [
  'read',
  'bring-in',
  'plan',
  'judge',
  'publish',
  'export',
  'template',
  'reckon',
  'watch',
  'practice-rig',
  'start',
];

test('every command is listed with what it does, and shows an example of itself', () => {
  const help = provinghouse('', '--help');
  assert.equal(help.code, 0);
  for (const name of names) {
    assert.match(help.out, new RegExp(`^  ${name} `, 'm'));
    const own = provinghouse('', name, '--help');
    assert.equal(own.code, 0);
    assert.match(own.out, new RegExp(`Example:\n  provinghouse ${name} `));
  }
});

test('used wrongly is 2: no command, an unknown one, an unknown option, a number that is none', () => {
  assert.equal(provinghouse('').code, 2);
  assert.equal(provinghouse('', 'weigh').code, 2);
  assert.equal(provinghouse('', 'judge', '--loud').code, 2);
  assert.equal(provinghouse('', 'judge').code, 2);
  const run = provinghouse('', 'read', 'x.csv', '--area-mm2', 'ten');
  assert.equal(run.code, 2);
  assert.match(run.err, /--area-mm2 takes a number above zero, not "ten"/);
});

/** The keys promised for `read --json`. */
const keys = `file sha256 columns samples duration_s sampleRate_Hz zeroForce_kN resolution_kN noise_kN maximumForce_kN
  maximumForceUncertainty_kN maximumIsAtLeast timeAtMaximum_s parted partingForce_kN timeAtParting_s stiffness_kN_per_mm
  stiffnessInterval95_kN_per_mm kneeForce_kN tableSpeed_mm_per_min forceRate_kN_per_s extensionAtMaximum_mm extensionAtParting_mm
  totalUltimateElongation_pct energyToMaximum_J energyToParting_J meanStressAtMaximum_N_per_mm2 spikes events valid notes`.split(
  /\s+/,
);

test('read --json prints an object for each file, with every promised key, and null for what is absent', () => {
  const run = provinghouse('', 'read', join(openTraces, '46NT71.csv'), join(openTraces, '46NT77.csv'), '--json');
  assert.equal(run.code, 0, run.err);
  const readings = run.out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>);
  assert.equal(readings.length, 2);
  for (const reading of readings) {
    for (const key of keys) assert.ok(key in reading, key);
    assert.equal(reading.meanStressAtMaximum_N_per_mm2, null);
  }
});

test('a file at fault is 1, its message begins with its name, and the other files are read', () =>
  withFolder((folder) => {
    const bad = join(folder, 'two-forces.csv');
    writeFileSync(bad, 'time_s,load_kN,force_kN\n0,0,0\n1,1,1\n2,3,3\n');
    const run = provinghouse('', 'read', bad, join(openTraces, '46NT71.csv'), '--json');
    assert.equal(run.code, 1);
    assert.equal(run.out.trimEnd().split('\n').length, 1);
    const { error } = JSON.parse(run.err) as { error: { code: string; message: string; choices: unknown[] } };
    assert.equal(error.code, 'trace/ambiguous-column');
    assert.ok(error.message.startsWith(bad));
    assert.equal(error.choices.length, 2);
    assert.equal(provinghouse('', 'read', join(folder, 'none.csv')).code, 1);
    assert.equal(provinghouse('', 'read', folder).code, 1);
  }));

test('a flag settles what a file leaves open', () =>
  withFolder((folder) => {
    const file = join(folder, 'open.csv');
    const rows = Array.from({ length: 60 }, (_, i) => `${i},${i < 50 ? i : 0},${i < 50 ? 2 * i : 0}`);
    writeFileSync(file, `time_s,load,second\n${rows.join('\n')}\n`);
    assert.equal(provinghouse('', 'read', file).code, 1);
    const run = provinghouse('', 'read', file, '--force-column', 'second[kN]', '--json');
    assert.equal(run.code, 0, run.err);
    assert.equal((JSON.parse(run.out) as { maximumForce_kN: number }).maximumForce_kN, 98);
  }));

test('a calculation takes its inputs as options, with a blank or an equals sign, and a decimal comma', () => {
  const spaced = provinghouse('', 'reckon', 'grade-breaking-force', '--grade', '30', '--size_mm', '8', '--json');
  const equals = provinghouse('', 'reckon', 'grade-breaking-force', '--grade=30', '--size_mm=8,0', '--json');
  assert.equal(spaced.code, 0, spaced.err);
  assert.deepEqual(
    (JSON.parse(spaced.out) as { outputs: unknown }).outputs,
    (JSON.parse(equals.out) as { outputs: unknown }).outputs,
  );
  assert.equal(provinghouse('', 'reckon', 'grade-breaking-force', '--grade', '30').code, 1);
  assert.equal(provinghouse('', 'reckon', 'no-such-thing').code, 1);
  assert.equal(provinghouse('', 'reckon').code, 2);
  assert.match(provinghouse('', 'reckon', '--list').out, /grade-breaking-force/);
  assert.match(provinghouse('', 'reckon', '--rules').out, /en-818-3/);
});

test('a template brings in as it is', () =>
  withFolder((folder) => {
    assert.equal(provinghouse('', 'template', join(folder, 'mine')).code, 0);
    const run = provinghouse(join(folder, 'home'), 'bring-in', join(folder, 'mine'), '--json');
    assert.equal(run.code, 0, run.err);
    assert.equal(provinghouse(join(folder, 'home'), 'judge', 'MY-CAMPAIGN').code, 0);
    assert.equal(provinghouse('', 'template', join(folder, 'mine')).code, 1);
  }));

test('output to a file or a pipe carries no colours', () =>
  withFolder((folder) => {
    provinghouse('', 'template', join(folder, 'mine'));
    provinghouse(join(folder, 'home'), 'bring-in', join(folder, 'mine'));
    assert.ok(!provinghouse(join(folder, 'home'), 'judge', 'MY-CAMPAIGN').out.includes('\u001b'));
  }));
