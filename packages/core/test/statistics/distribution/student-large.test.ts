import assert from 'node:assert/strict';
import { test } from 'node:test';
import { studentQuantile, studentUpper } from '../../../src/index.ts';
import { numbersFromR, withR } from '../../referee/r.ts';

const freedoms = [9.9e6, 1.1e7, 1e8, 1e10, 1e12, 1e14, 1e18, 1e20, 1e40, 1e300];
const sizes = [0, 0.5, 1, 1.96, 3, 6, 12];

test('with very many degrees of freedom the tails are those of R', async () => {
  await withR(async (r) => {
    for (const nu of freedoms) {
      const byR = await numbersFromR(r, `pt(t, ${nu}, lower.tail = FALSE)`, { t: sizes });
      sizes.forEach((t, at) => {
        const ours = studentUpper(t, nu);
        assert.ok(Math.abs(ours / (byR[at] ?? 0) - 1) < 2e-10, `t = ${t}, nu = ${nu}: ${ours}, R ${byR[at]}`);
      });
    }
  });
});

test('with very many degrees of freedom the quantile is that of R, and falls to that of the normal distribution', async () => {
  await withR(async (r) => {
    for (const nu of freedoms) {
      const [byR] = await numbersFromR(r, `qt(0.975, ${nu})`);
      assert.ok(Math.abs(studentQuantile(0.975, nu) - (byR ?? 0)) < 1e-9, String(nu));
    }
  });
  const normal = studentQuantile(0.975, Infinity);
  for (const nu of [1e16, 1e20, 1e300]) assert.ok(Math.abs(studentQuantile(0.975, nu) - normal) < 1e-12);
});
