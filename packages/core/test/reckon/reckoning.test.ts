import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { rulebook, specificationFor } from '../../src/chain/index.ts';
import { isInputError } from '../../src/errors.ts';
import { calculations, reckon } from '../../src/reckon/index.ts';
import { limitOf } from '../chain/limit-of.ts';
import { check, citation, coatingChecks } from '../reference-checks.ts';

for (const calculation of calculations) {
  test(`${calculation.name} gives each output it names, and only those, from its example`, () => {
    const { outputs, inputs, source } = reckon(calculation.name, calculation.example);
    assert.deepEqual(
      Object.keys(outputs),
      calculation.outputs.map(({ key }) => key),
    );
    assert.deepEqual(inputs, calculation.example);
    assert.ok(source.length > 10);
    assert.ok(Object.values(outputs).some((value) => value !== null));
    for (const value of Object.values(outputs)) assert.ok(typeof value !== 'number' || Number.isFinite(value));
  });

  test(`${calculation.name} takes a decimal comma as it takes a point`, () => {
    const texts = Object.fromEntries(
      Object.entries(calculation.example).map(([key, value]) => [key, `${value}`.replace('.', ',')]),
    );
    assert.deepEqual(reckon(calculation.name, texts), reckon(calculation.name, calculation.example));
  });
}

test('names are lower case with hyphens, and no two are alike; units stand in the keys', () => {
  const names = calculations.map(({ name }) => name);
  assert.equal(new Set(names).size, names.length);
  for (const name of names) assert.match(name, /^[a-z0-9]+(-[a-z0-9]+)*$/);
  for (const { inputs, outputs } of calculations) {
    for (const { key, unit } of [...inputs, ...outputs]) {
      if (unit === '' || unit === 'any') continue;
      const written =
        unit === '%' ? 'pct' : unit.startsWith('1/') ? `per_${unit.slice(2)}` : unit.replaceAll('/', '_per_');
      assert.ok(key.endsWith(written) || key === 'coefficient', `${key} ends with ${written}`);
    }
  }
});

/** A published or derived check of the reference file, run through a calculation. */
interface ReferenceRun {
  readonly id: string;
  readonly name: string;
  /** Input of the calculation from the inputs of the check. */
  readonly inputs: (given: Readonly<Record<string, unknown>>) => Record<string, number>;
  /** Key of the check's expected value to key of the calculation's output. */
  readonly compare: Readonly<Record<string, string>>;
}

const gradeInputs = (given: Readonly<Record<string, unknown>>) => ({
  size_mm: Number(given.d_mm),
  force_kN: Number(given.breaking_force_kN),
});
const linkInputs = (given: Readonly<Record<string, unknown>>) => ({
  size_mm: Number(given.d_mm),
  pitch_mm: Number(given.pitch_inside_length_mm),
  innerWidth_mm: Number(given.inside_width_mm),
});
const guardInputs = (given: Readonly<Record<string, unknown>>) => ({
  lowerLimit: Number(given.lower_limit_kN),
  expandedUncertainty: Number(given.U95_kN ?? 0),
  measured: Number(given.measured_kN),
});

const runs: readonly ReferenceRun[] = [
  {
    id: 'GRADE-1',
    name: 'grade-of-chain',
    inputs: gradeInputs,
    compare: { stress_MPa: 'stress_N_per_mm2', grade_value: 'grade' },
  },
  {
    id: 'GRADE-2',
    name: 'grade-of-chain',
    inputs: gradeInputs,
    compare: { stress_MPa: 'stress_N_per_mm2', grade_value: 'grade' },
  },
  {
    id: 'RATE-1',
    name: 'force-rate',
    inputs: (given) => ({ size_mm: Number(given.d_mm), stressRate_N_per_mm2_per_s: Number(given.stress_rate_MPa_s) }),
    compare: { force_rate_kN_s: 'forceRate_kN_per_s' },
  },
  {
    id: 'ENERGY-1',
    name: 'parting-energy',
    inputs: (given) => ({ force_kN: Number(given.F_kN), stiffness_kN_per_mm: Number(given.K_kN_mm) }),
    compare: { energy_J: 'energy_J' },
  },
  {
    id: 'ELONG-1',
    name: 'elongation',
    inputs: (given) => ({ extension_mm: Number(given.extension_mm), links: 5, pitch_mm: Number(given.L0_mm) / 5 }),
    compare: { elongation_percent: 'elongation_pct' },
  },
  {
    id: 'LINK-GEO-8x24',
    name: 'link-mass',
    inputs: linkInputs,
    compare: { link_mass_kg: 'linkMass_kg', mass_kg_per_m: 'massPerMetre_kg_per_m' },
  },
  {
    id: 'LINK-GEO-10x28',
    name: 'link-mass',
    inputs: linkInputs,
    compare: { link_mass_kg: 'linkMass_kg', mass_kg_per_m: 'massPerMetre_kg_per_m' },
  },
  {
    id: 'LINK-GEO-6x18.5',
    name: 'link-mass',
    inputs: linkInputs,
    compare: { link_mass_kg: 'linkMass_kg', mass_kg_per_m: 'massPerMetre_kg_per_m' },
  },
  { id: 'GUARD-1', name: 'guard-band', inputs: guardInputs, compare: { acceptance_limit_kN: 'lowerAcceptance' } },
];

for (const { id, name, inputs, compare } of runs) {
  const reference = check(coatingChecks, id);
  test(`${id}: ${name} gives the expected values (${citation(reference)})`, () => {
    const { outputs } = reckon(name, inputs(reference.inputs));
    for (const [expectedKey, key] of Object.entries(compare)) {
      const expected = Number(reference.expected[expectedKey]);
      const deviation = Math.abs(Number(outputs[key]) - expected);
      // The tolerance of the file is absolute in the unit of the field; a millionth of a millionth allows for binary rounding.
      assert.ok(deviation <= (reference.tolerance ?? 0) + 1e-12, `${key}: ${outputs[key]}, expected ${expected}`);
    }
  });
}

/** Both middle bands of the four-word form of ILAC-G8 are one word here. */
const verdictWords: Readonly<Record<string, string>> = {
  pass: 'conforms',
  'conditional pass': 'inconclusive',
  'conditional fail': 'inconclusive',
  fail: 'does not conform',
};
for (const id of ['GUARD-1', 'GUARD-2', 'GUARD-3', 'GUARD-4', 'GUARD-5']) {
  const reference = check(coatingChecks, id);
  test(`${id}: the guard band decides as ILAC-G8 does (${citation(reference)})`, () => {
    const { outputs } = reckon('guard-band', guardInputs(reference.inputs));
    assert.equal(outputs.verdict, verdictWords[String(reference.expected.verdict)]);
  });
}

test('an upper limit is guarded from below, and two limits from both sides', () => {
  const { outputs } = reckon('guard-band', {
    lowerLimit: 7.6,
    upperLimit: 8.4,
    expandedUncertainty: 0.1,
    measured: 8.35,
  });
  assert.equal(outputs.verdict, 'inconclusive');
  assert.ok(Math.abs(Number(outputs.upperAcceptance) - 8.3) < 1e-12);
  assert.throws(() => reckon('guard-band', { expandedUncertainty: 0.1 }), hasCode('reckon/no-limit'));
});

test('the worked example of grade 80, 10 mm comes out in kN and lbf (supplier page on grading)', () => {
  const example = rulebook.checks.find(({ id }) => id === 'worked-example');
  const force = Number(reckon('grade-breaking-force', { grade: 80, size_mm: 10 }).outputs.breakingForce_kN);
  assert.ok(Math.abs(force - Number(example?.expected)) <= Number(example?.accept.abs));
  const pounds = Number(reckon('convert-force', { force_kN: force }).outputs.force_lbf);
  assert.ok(Math.abs(pounds - Number(example?.also?.lbf)) <= Number(example?.also?.accept.abs));
});

test('the stud-link load gives the R3 table of UR W22 to its rounding (up to whole kN)', () => {
  const rule = rulebook.standards.find(({ id }) => id === 'IACS UR W22')?.rules.find(({ id }) => id === 'load');
  const coefficient = Number(rule?.coefficients?.R3?.breaking);
  for (const size_mm of [34, 50, 68]) {
    const published = Number(
      limitOf(specificationFor({ standard: 'W22', grade: 'R3', size_mm }), 'breakingForce').lower,
    );
    const load = Number(reckon('stud-link-load', { coefficient, size_mm }).outputs.load_kN);
    assert.ok(published - load >= 0 && published - load <= 1, `${size_mm}: ${load}, published ${published}`);
  }
});

test('a force converted to any unit and back is the same force; one kgf is 9.80665 N by definition', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e5, noNaN: true }), (force_kN) => {
      const { outputs } = reckon('convert-force', { force_kN });
      for (const [key, value] of Object.entries(outputs)) {
        const back = Number(reckon('convert-force', { [key]: Number(value) }).outputs.force_kN);
        assert.ok(Math.abs(back / force_kN - 1) < 1e-12, key);
      }
    }),
    { seed: 7, numRuns: 100 },
  );
  const gravity = rulebook.general.constants.standardGravity?.value ?? Number.NaN;
  const pound = rulebook.general.constants.lbfToKN?.value ?? Number.NaN;
  assert.ok(Math.abs(Number(reckon('convert-force', { force_kgf: 1 }).outputs.force_N) / gravity - 1) < 1e-12);
  assert.ok(Math.abs(Number(reckon('convert-force', { force_lbf: 1 }).outputs.force_kN) / pound - 1) < 1e-12);
});

test('convert-force takes exactly one force', () => {
  assert.throws(() => reckon('convert-force', {}), hasCode('reckon/one-force'));
  assert.throws(() => reckon('convert-force', { force_kN: 1, force_lbf: 2 }), hasCode('reckon/one-force'));
});

test('a coarser machine class has the larger uncertainty, in proportion to its permitted error', () => {
  const u = (grade: number) =>
    Number(reckon('rig-class-uncertainty', { force_kN: 40, class: grade }).outputs.standardUncertainty_kN);
  assert.ok(Math.abs(u(2) / u(1) - 2) < 1e-12 && Math.abs(u(0.5) / u(1) - 0.5) < 1e-12);
  assert.ok(Math.abs(u(1) - 0.4 / Math.sqrt(3)) < 1e-12);
});

test('force rate and stress rate undo one another', () => {
  const { outputs } = reckon('force-rate', { stressRate_N_per_mm2_per_s: 10, size_mm: 8 });
  const back = reckon('stress-rate', { forceRate_kN_per_s: Number(outputs.forceRate_kN_per_s), size_mm: 8 });
  assert.ok(Math.abs(Number(back.outputs.stressRate_N_per_mm2_per_s) - 10) < 1e-12);
});

test('an unknown name lists the near ones, or all when none is near', () => {
  assert.throws(
    () => reckon('grade-force', {}),
    (error) => isInputError(error) && error.message.includes('grade-breaking-force'),
  );
  assert.throws(
    () => reckon('xyz', {}),
    (error) => isInputError(error) && error.message.includes('nominal-area'),
  );
});

test('all faults of the inputs are told at once', () => {
  assert.throws(
    () => reckon('grade-of-chain', { force_kN: 'strong', diameter: 8 }),
    (error) =>
      isInputError(error) &&
      error.code === 'reckon/inputs' &&
      ['force_kN must be a number', 'size_mm is missing', 'diameter is not an input'].every((part) =>
        error.message.includes(part),
      ),
  );
});

for (const value of ['1.234,5', '1 000', '', '0x10', 'Infinity', 'NaN', '1e', '--4', '0', '-3']) {
  test(`"${value}" is no force`, () => {
    assert.throws(() => reckon('grade-of-chain', { force_kN: value, size_mm: 8 }), hasCode('reckon/inputs'));
  });
}

test('an accuracy class that does not exist is refused with those that do (ISO 7500-1, memory)', () => {
  assert.throws(
    () => reckon('rig-class-uncertainty', { force_kN: 40, class: 1.5 }),
    (error) => isInputError(error) && error.message.includes('0.5, 1, 2, 3'),
  );
});

function hasCode(code: string): (error: unknown) => boolean {
  return (error) => isInputError(error) && error.code === code;
}
