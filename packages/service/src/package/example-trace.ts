const sampleInterval_s = 0.1;
const plateau_kN = 34;

/**
 * An invented recording for the template: slack, a straight rise, yielding, a maximum, parting. It is a drawing of a
 * pull, not a measurement.
 */
export function exampleTrace(): Uint8Array {
  const lines = ['time_s,force_kN,table_mm'];
  for (let i = 0; i <= 450; i += 1) {
    const time = i * sampleInterval_s;
    lines.push(`${time.toFixed(1)},${force_kN(time).toFixed(3)},${(time * 0.5).toFixed(3)}`);
  }
  return Buffer.from(`${lines.join('\n')}\n`);
}

function force_kN(time_s: number): number {
  if (time_s < 3) return 0;
  if (time_s > 42) return 0;
  const rise = plateau_kN * (1 - Math.exp(-(time_s - 3) / 7));
  const necking = time_s > 36 ? ((time_s - 36) / 6) ** 2 * 3 : 0;
  return rise - necking;
}
