import assert from 'node:assert/strict';

/** Asserts a relative difference below the tolerance (or both below 1e-290); REFEREE_WORST set prints the worst met. */
export function alike(ours: readonly (number | null)[], theirs: readonly number[], tolerance = 1e-6): void {
  assert.equal(ours.length, theirs.length);
  let worst = 0;
  ours.forEach((own, index) => {
    const other = theirs[index] ?? Number.NaN;
    assert.ok(own !== null && Number.isFinite(other), `case ${index}: ${own} against ${other}`);
    const scale = Math.max(Math.abs(own), Math.abs(other));
    const off = scale < 1e-290 ? 0 : Math.abs(own - other) / scale;
    worst = Math.max(worst, off);
    assert.ok(off < tolerance, `case ${index}: ${own} against ${other}`);
  });
  if (process.env.REFEREE_WORST)
    console.log(`${ours.length} numbers, worst relative difference ${worst.toExponential(1)}`);
}
