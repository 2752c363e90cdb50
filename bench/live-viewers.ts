import type { LiveMessage } from '@provinghouse/contract';
import { WebSocket } from 'ws';

/** Five viewers of a pull, the last of which reads nothing; tells how long each newest sample was on its way, in ms. */
const [url = '', epoch = '0'] = process.argv.slice(2);
const epoch_ms = Number(epoch);
const delays_ms: number[] = [];
const counts = { messages: 0, received: 0 };
for (let i = 0; i < 5; i++) {
  const socket = new WebSocket(url);
  if (i === 4) socket.on('open', () => socket.pause());
  socket.on('message', (data) => {
    const message = JSON.parse(String(data)) as LiveMessage;
    if (message.kind !== 'samples' || message.received === 0) return;
    counts.messages += 1;
    counts.received = Math.max(counts.received, message.received);
    const newest_s = message.samples.at(-1)?.force_kN ?? 0;
    delays_ms.push(Date.now() - epoch_ms - 1000 * newest_s);
  });
}
process.on('message', () => {
  delays_ms.sort((a, b) => a - b);
  const at = (share: number) => delays_ms[Math.min(delays_ms.length - 1, Math.floor(share * delays_ms.length))];
  process.send?.({ ...counts, median_ms: at(0.5), p99_ms: at(0.99), greatest_ms: at(1) });
});
