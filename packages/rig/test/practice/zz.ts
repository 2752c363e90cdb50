import { existsSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { SerialPort } from 'serialport';
import { servePractice } from '../../src/practice/index.ts';

const t0 = performance.now();
const L = (s: string) => console.log((performance.now() - t0).toFixed(0), s);
const wire = await servePractice({ seed: 3, rate_Hz: 100, over: 'pty' });
L('laid');
for (let v = 0; v < 2; v++) {
  const port = new SerialPort({ path: wire.address, baudRate: 9600 });
  await new Promise((r) => port.once('data', r));
  L('data');
  await new Promise((r) => port.close(r));
  L('closed');
  while (wire.progress().readers > 0) await setTimeout(10);
  L('reader gone');
  while (!existsSync(wire.address)) await setTimeout(10);
  L('link there');
}
await wire.stop();
L('down');
