import { createServer } from 'node:net';

/** A rig in a process of its own: two channels at the rate given, for the seconds given, to the first who connects. */
const [rate_Hz = 10_000, seconds = 20] = process.argv.slice(2).map(Number);
const server = createServer((socket) => {
  socket.setNoDelay(true).on('error', () => process.exit(0));
  socket.resume();
  const began_ms = performance.now();
  let made = 0;
  const timer = setInterval(() => {
    const due = Math.min(((performance.now() - began_ms) / 1000) * rate_Hz, rate_Hz * seconds);
    let text = '';
    for (; made < due; made++)
      text += `${(made / rate_Hz).toFixed(4)} ${(made / 1000).toFixed(3)} ${(made / 500).toFixed(3)}\n`;
    if (text) socket.write(text);
    if (made >= rate_Hz * seconds) {
      clearInterval(timer);
      process.send?.({ made });
    }
  }, 1);
});
server.listen(0, '127.0.0.1', () => process.send?.(server.address()));
