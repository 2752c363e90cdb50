import { createServer } from 'node:net';

/** A rig that sends two channels over TCP at the rate given; the force is the time of sending, in seconds since the epoch given, as kN. */
const [rate_Hz = 10_000, epoch_ms = 0] = process.argv.slice(2).map(Number);
const beat_ms = 5;
const server = createServer((socket) => {
  socket.setNoDelay(true);
  socket.on('error', () => socket.destroy());
  const began_ms = performance.now();
  let sent = 0;
  const timer = setInterval(() => {
    const due = Math.floor(((performance.now() - began_ms) / 1000) * rate_Hz);
    const now_s = (Date.now() - epoch_ms) / 1000;
    let text = '';
    for (; sent < due; sent++) text += `F ${now_s.toFixed(3)} X ${(sent / rate_Hz).toFixed(4)}\n`;
    if (text !== '') socket.write(text);
    process.send?.({ sent });
  }, beat_ms);
  socket.on('close', () => clearInterval(timer));
});
server.listen(0, '127.0.0.1', () => {
  const address = server.address();
  process.send?.({ port: typeof address === 'object' ? address?.port : null });
});
