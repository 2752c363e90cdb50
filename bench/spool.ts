import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { type PullRecord, recover, sealSpool, startRecord, tcpLines } from '../packages/rig/src/index.ts';
import { writePagePart } from './page-part.ts';

const SECONDS = Number(process.argv[2] ?? 20);

interface Measured {
  readonly rate_Hz: number;
  readonly made: number;
  readonly kept: number;
  readonly gaps: number;
  readonly cpuShare: number;
  readonly latency_ms: { readonly median: number; readonly p99: number; readonly worst: number };
  readonly toSynced_ms: number;
  readonly bytesPerReading: number;
  readonly seal_s: number;
}

function latencyOf(all: Float64Array): Measured['latency_ms'] {
  const sorted = all.toSorted();
  const at = (share: number) => 1000 * (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0);
  return { median: at(0.5), p99: at(0.99), worst: at(1) };
}

async function measure(rate_Hz: number): Promise<Measured> {
  const folder = mkdtempSync(join(tmpdir(), 'spool-'));
  const path = join(folder, 'pull.spool');
  const rig = fork(new URL('./spool-rig.ts', import.meta.url), [String(rate_Hz), String(SECONDS)]);
  const [address] = await once(rig, 'message');
  const source = tcpLines({
    host: '127.0.0.1',
    port: address.port,
    pattern: '{time[s]} {force[kN]} {table[mm]}',
    decimal: '.',
    channels: [],
  });
  const late_s = new Float64Array(rate_Hz * SECONDS);
  let shown = 0;
  const cpu = process.cpuUsage();
  const began_ms = performance.now();
  let record: PullRecord | null = null;
  record = await startRecord({
    path,
    header: { pull: 'P', piece: 'S', rig: 'bench', isPractice: true, startedAt: new Date().toISOString() },
    sources: [source],
    listener: {
      samples(batch) {
        const now_s = record?.now_s() ?? 0;
        for (const { time_s } of batch) late_s[shown++] = now_s - time_s;
      },
      trouble: (words) => console.log(words),
    },
  });
  const [{ made }] = await once(rig, 'message');
  await setTimeout(200);
  const used = process.cpuUsage(cpu);
  const took_ms = performance.now() - began_ms;
  const stats = await record.stop('enough');
  rig.kill();
  const found = await recover(path);
  const sealing_ms = performance.now();
  await sealSpool(path, `${path}.csv`);
  const result = {
    rate_Hz,
    made,
    kept: found.samples,
    gaps: found.gaps.length,
    cpuShare: (used.user + used.system) / 1000 / took_ms,
    latency_ms: latencyOf(late_s.subarray(0, shown)),
    toSynced_ms: 1000 * stats.longestToSynced_s,
    bytesPerReading: statSync(path).size / found.readings,
    seal_s: (performance.now() - sealing_ms) / 1000,
  };
  rmSync(folder, { recursive: true, force: true });
  return result;
}

function row(found: Measured): string {
  const { median, p99, worst } = found.latency_ms;
  const cells = [
    `${found.rate_Hz} Hz x 2`,
    `${SECONDS} s`,
    found.made,
    found.made - found.kept,
    found.gaps,
    `${(100 * found.cpuShare).toFixed(0)} %`,
    `${median.toFixed(1)} / ${p99.toFixed(1)} / ${worst.toFixed(1)}`,
    found.toSynced_ms.toFixed(0),
    found.bytesPerReading.toFixed(1),
    found.seal_s.toFixed(1),
  ];
  return `| ${cells.join(' | ')} |`;
}

const HEADER = `| rate | for | lines sent | lost | gaps | share of a core | from the wire to the viewer's side of the spool, ms: median / 99 % / worst | longest to the disc itself, ms | bytes a reading | to seal, s |
|---|---|---|---|---|---|---|---|---|---|`;

/** Records two channels over TCP as fast as they come and writes what it cost into docs/reference/signals.md. */
export async function benchSpool(): Promise<void> {
  const rows: string[] = [];
  for (const rate_Hz of [1000, 10_000]) {
    rows.push(row(await measure(rate_Hz)));
    console.log(rows.at(-1));
  }
  const where = `Measured ${new Date().toISOString().slice(0, 10)} with Node ${process.version} on ${cpus().length} cores, Linux, shared with other work.`;
  writePagePart('reference/signals.md', 'throughput', `${where}\n\n${HEADER}\n${rows.join('\n')}`);
}

if (import.meta.main) await benchSpool();
