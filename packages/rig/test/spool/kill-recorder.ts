import { writeSync } from 'node:fs';
import { startRecord, tcpLines } from '../../src/index.ts';

/** A process that records from a port until it is killed, and says on its output what it has shown. */
const [port, path] = process.argv.slice(2);
const source = tcpLines({
  host: '127.0.0.1',
  port: Number(port),
  pattern: '{time[s]} {force[kN]} {table[mm]}',
  decimal: '.',
  channels: [],
});
await startRecord({
  path: path ?? '',
  header: { pull: 'P1', piece: 'S1-1', rig: 'trial', isPractice: true, startedAt: new Date().toISOString() },
  sources: [source],
  listener: {
    samples: (batch) => void writeSync(1, `shown ${batch.at(-1)?.force_kN}\n`),
    trouble: (words) => void writeSync(1, `trouble ${words}\n`),
  },
});
