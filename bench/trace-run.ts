// One run of our reader in a process of its own: reads the file named on the command line and prints what it found.
import { readFileSync } from 'node:fs';
import { enableCompileCache } from 'node:module';

// Node then keeps what it compiled of our modules, as Python keeps its bytecode.
enableCompileCache();
const { readTrace } = await import('../packages/core/src/trace/read-signals.ts');

const started = performance.now();
const reading = readTrace(readFileSync(process.argv[2] ?? ''));
const seconds = (performance.now() - started) / 1000;
console.log(
  JSON.stringify({
    seconds,
    maximum: reading.maximumForce_kN,
    slope: reading.stiffness_kN_per_mm,
    energy: reading.energyToParting_J,
    rows: reading.samples,
  }),
);
