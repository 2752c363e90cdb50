import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '../../src/errors.ts';
import { conformityCalculations } from '../../src/reckon/conformity-calculations.ts';
import { planningCalculations } from '../../src/reckon/planning-calculations.ts';
import { uncertaintyCalculations } from '../../src/reckon/uncertainty-calculations.ts';
import { expectedOf, inputsOf, origin } from '../uncertainty/published-check.ts';

const all = [...uncertaintyCalculations, ...conformityCalculations, ...planningCalculations];

function compute(name: string, inputs: Readonly<Record<string, number>>) {
  const found = all.find((calculation) => calculation.name === name);
  assert.ok(found, name);
  return found.compute(inputs);
}

for (const calculation of all) {
  test(`${calculation.name} gives each output it names, and only those, from its example`, () => {
    const outputs = calculation.compute(calculation.example);
    assert.deepEqual(
      Object.keys(outputs),
      calculation.outputs.map(({ key }) => key),
    );
    for (const [key, value] of Object.entries(outputs))
      assert.ok(value === null || typeof value === 'string' || Number.isFinite(value), `${key} is ${value}`);
    assert.ok(Object.keys(calculation.example).every((key) => calculation.inputs.some((input) => input.key === key)));
    assert.ok(calculation.inputs.every(({ key, required }) => !required || key in calculation.example));
  });

  test(`${calculation.name} carries its units in its keys`, () => {
    for (const { key, unit } of [...calculation.inputs, ...calculation.outputs]) {
      if (unit === '' || unit === 'any') continue;
      assert.ok(key.endsWith(unit === '%' ? 'pct' : unit.replaceAll('/', '_per_')), `${key} ends with ${unit}`);
    }
  });
}

test('no two calculations are named alike', () => {
  assert.equal(new Set(all.map(({ name }) => name)).size, all.length);
});

test(`force-uncertainty: a force on a class 1 rig [${origin('force-budget-class1')}]`, () => {
  const { force_kN } = inputsOf<{ force_kN: number }>('force-budget-class1');
  const found = compute('force-uncertainty', {
    force_kN,
    class: 1,
    resolution_kN: 0.5,
    certificateUncertainty_kN: 0.24,
    coverageFactor: 2,
  });
  const { value = 0, tol } = expectedOf('force-budget-class1', 'U_kN');
  assert.ok(Math.abs(Number(found.expandedUncertainty_kN) - value) <= tol);
});

test(`conformity-probability: a strength above its limit [${origin('jcgm106-burst-strength')}]`, () => {
  const { y = 0, u = 0, TL = 0 } = inputsOf<Record<string, number>>('jcgm106-burst-strength');
  const found = compute('conformity-probability', { measured: y, standardUncertainty: u, lowerLimit: TL });
  const { value = 0, tol } = expectedOf('jcgm106-burst-strength', 'pc');
  assert.ok(Math.abs(Number(found.conforms_pct) / 100 - value) <= tol);
});

test(`pieces-for-fraction: a success run [${origin('success-run-sample-sizes')}]`, () => {
  const { R, C } = inputsOf<{ R: number[]; C: number[] }>('success-run-sample-sizes');
  const wanted = expectedOf('success-run-sample-sizes', 'n').values ?? [];
  const found = R.map((reliability, index) =>
    compute('pieces-for-fraction', { reliability_pct: 100 * reliability, confidence_pct: 100 * (C[index] ?? 0) }),
  );
  assert.deepEqual(
    found.map(({ pieces }) => pieces),
    wanted,
  );
});

test('what cannot be is refused with its place and cure', () => {
  const refused = (name: string, inputs: Readonly<Record<string, number>>, code: string) =>
    assert.throws(
      () => compute(name, inputs),
      (error) => isInputError(error) && error.code === code,
    );
  refused('coverage-factor', { probability_pct: 100 }, 'reckon/chance');
  refused('scatter-reliability', { readings: 1.5 }, 'reckon/count');
  refused('conformity-probability', { measured: 1, standardUncertainty: 1 }, 'reckon/no-limit');
  refused(
    'acceptance-for-risk',
    { standardUncertainty: 1, risk_pct: 5, lowerLimit: 2, upperLimit: 1 },
    'reckon/crossed-limits',
  );
  refused('rig-check', { least_kN: 3, greatest_kN: 2 }, 'reckon/force-order');
  refused('rig-check', { least_kN: 1, greatest_kN: 2, margin: 0.5 }, 'reckon/margin');
});
