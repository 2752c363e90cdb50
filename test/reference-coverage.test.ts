import assert from 'node:assert/strict';
import { globSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const root = new URL('../', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, root), 'utf8');

/** Checks of the reference file that nothing here computes, each with the reason. */
const untouched: Readonly<Record<string, string>> = {
  'strd-linreg-pontius': 'a quadratic calibration curve: no such fit is made',
  'strd-nonlin-misra1a': 'nonlinear least squares: no such fit is made',
  'strd-nonlin-thurber': 'nonlinear least squares: no such fit is made',
  'iso376-classes': 'limits of force-proving instruments, which are not recorded',
  'iso6892-1-rates': 'rates for machined test pieces, which chain is not',
  'iso6892-1-definitions': 'definitions, no figures to recompute',
  'astm-e691-glucose-A': 'repeatability between laboratories is not computed',
  'astm-e691-glucose-D': 'repeatability between laboratories is not computed',
  'astm-e691-glucose-E': 'repeatability between laboratories is not computed',
  'bcr-661-tensile': 'a certificate, no figures to recompute',
  'astm-e8-precision': 'precision of other laboratories, no figures to recompute',
};

test('every check of the statistics reference is recomputed by a test, or set aside with its reason', () => {
  const ids = (JSON.parse(read('packages/core/test/reference/stats-checks.json')) as { readonly id: string }[]).map(
    (entry) => entry.id,
  );
  const tests = globSync('packages/core/test/**/*.ts', { cwd: root }).map(read).join('\n');
  const bySet = ['strd-univariate-', 'strd-anova-'].filter((prefix) => tests.includes(`startsWith('${prefix}')`));
  const missing = ids.filter((id) => !tests.includes(`'${id}'`) && !bySet.some((prefix) => id.startsWith(prefix)));
  assert.deepEqual(missing.sort(), Object.keys(untouched).sort());
});
