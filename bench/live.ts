import { fork } from 'node:child_process';
import { once } from 'node:events';
import { createReadStream } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { cautions } from '@provinghouse/contract';
import { startServer } from '@provinghouse/server';
import { openRecord } from '@provinghouse/service';
import { bringInPractice, openRigDesks, readKit } from '@provinghouse/service/pull';

/**
 * A pull at 10 kHz on two channels with five viewers, one of which reads nothing: node bench/live.ts [SECONDS [RATE]]. The rig and the viewers are
 * processes of their own; what is measured is the process that keeps the record and serves it: also how long its event loop did not turn, while it
 * recorded and while the recording was sealed.
 */
const [seconds = 600, rate_Hz = 10_000] = process.argv.slice(2).map(Number);
const own = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const epoch_ms = Date.now();

const sender = fork(own('live-sender.ts'), [String(rate_Hz), String(epoch_ms)]);
const [{ port }] = await once(sender, 'message');
let sent = 0;
sender.on('message', (message: { readonly sent: number }) => {
  sent = message.sent;
});

const home = await mkdtemp(join(tmpdir(), 'provinghouse-live-'));
await mkdir(join(home, 'kit'));
const source = { kind: 'tcp lines', host: '127.0.0.1', port, pattern: 'F {force[kN]} X {table[mm]}' };
await writeFile(join(home, 'kit', 'PRACTICE-RIG.json'), JSON.stringify({ sources: [source] }));
const { effects, close } = await openRecord({ home });
await bringInPractice(effects);
const desks = openRigDesks({ rigs: await readKit(home), home }, effects);
const nothing = async () => null;
const ports = {
  campaigns: async () => ({ campaigns: [], next: null }),
  finding: nothing,
  brief: nothing,
  curve: nothing,
  package: nothing,
  report: nothing,
  ledger: nothing,
  ledgerState: nothing,
};
const server = await startServer({ ports, rigs: desks, port: 0 });
const url = `${server.address.replace('http', 'ws')}/api/rigs/PRACTICE-RIG/live`;
const viewers = fork(own('live-viewers.ts'), [url, String(epoch_ms)]);

const piece = 'PRACTICE-8-1';
await desks.arm('PRACTICE-RIG', {
  campaign: 'PRACTICE',
  piece,
  confirmed: piece,
  operator: null,
  cautions: [...cautions],
});
await new Promise((resolve) => setTimeout(resolve, 1500));
const sentBefore = sent;
const loop = monitorEventLoopDelay({ resolution: 1 });
loop.enable();
const cpuBefore = process.cpuUsage();
const began_ms = performance.now();
await desks.start('PRACTICE-RIG');
await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
const cpu = process.cpuUsage(cpuBefore);
const took_s = (performance.now() - began_ms) / 1000;
viewers.send('tell');
const [seen] = await once(viewers, 'message');
const expected = sent - sentBefore;
const loopWhileRecording = loopDelays();
const shares = { cpuShare: (cpu.user + cpu.system) / 1e6 / took_s, rss_MB: process.memoryUsage.rss() / 1e6 };
const machine = { load: loadavg(), loopWhileRecording };
console.log(JSON.stringify({ seconds: took_s, rate_Hz, expected, ...shares, ...seen, ...machine }, null, 2));
viewers.kill();
const stopped_ms = performance.now();
await desks.stop('PRACTICE-RIG');
const { promise, resolve } = Promise.withResolvers<void>();
await desks.follow('PRACTICE-RIG', {
  send: (message) => {
    if (message.kind !== 'ended') return;
    console.log(JSON.stringify({ sealed: message.samples, rejected: message.rejected, ended: message.view.ended }));
    resolve();
  },
  backlog: () => 0,
  drop: () => undefined,
});
await promise;
const sealedAfter_s = (performance.now() - stopped_ms) / 1000;
const loopWhileSealing = loopDelays();
console.log(JSON.stringify({ sealedAfter_s, loopWhileSealing, load: loadavg(), ...(await steps()) }));
sender.kill();
await server.close();
await desks.close();
await close();
await rm(home, { recursive: true });

/** How long the event loop did not turn since this was last asked. */
function loopDelays() {
  const delays = {
    median_ms: loop.percentile(50) / 1e6,
    p99_ms: loop.percentile(99) / 1e6,
    longest_ms: loop.max / 1e6,
  };
  loop.reset();
  return delays;
}

/** The table of this sender rises by the same step with every line, so a line that is missing shows as a longer one. */
async function steps(): Promise<{ readonly lines: number; readonly missing: number }> {
  let lines = 0;
  let missing = 0;
  let last: number | null = null;
  for await (const line of createInterface(createReadStream(join(home, 'spool', 'sealed', 'PRACTICE.P-001.csv')))) {
    const [time, , table] = line.split(',');
    if (time === undefined || table === undefined || !/^-?[\d.]+$/.test(time)) continue;
    const place = Math.round(Number(table) * rate_Hz);
    if (last !== null) missing += place - last - 1;
    last = place;
    lines += 1;
  }
  return { lines, missing };
}
