import { once } from 'node:events';
import { createServer, type Socket } from 'node:net';

/** What befalls the wire or the disc before the process is killed. */
export type Mishap = 'none' | 'stall' | 'garbled' | 'clock jump' | 'disconnect' | 'disc full' | 'disc full, then freed';

/** Seeded numbers from 0 to 1 (mulberry32). */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface Sent {
  readonly at_ms: number;
  readonly isGarbled: boolean;
}

/** A rig at 1 kHz: line k carries force k/1000 kN, so that every reading kept can be told. */
export async function trialRig({ mishap }: { readonly mishap: Mishap }, draw: () => number) {
  const sent = new Map<number, Sent>();
  const mishapFrom_ms = 150 + 250 * draw();
  const mishapLasts_ms = 120 + 280 * draw();
  const jump_s = (draw() < 0.5 ? -1 : 1) * (0.5 + 5 * draw());
  let began_ms: number | null = null;
  let made = 0;
  let socket: Socket | null = null;
  let hasCut = false;
  const server = createServer((connected) => {
    connected.setNoDelay(true).on('error', () => {});
    connected.resume();
    socket = connected;
    began_ms ??= performance.now();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');

  function lineOf(k: number, isMishap: boolean, since_ms: number): { text: Buffer; isGarbled: boolean } {
    const hasJumped = mishap === 'clock jump' && since_ms > mishapFrom_ms;
    const text = Buffer.from(`${(100 + k / 1000 + (hasJumped ? jump_s : 0)).toFixed(3)} ${k / 1000} ${k / 500}\n`);
    const isGarbled = mishap === 'garbled' && isMishap && draw() < 0.5;
    if (isGarbled) text[Math.floor(draw() * (text.length - 1))] = 0x80 + Math.floor(draw() * 0x80);
    return { text, isGarbled };
  }
  function tick(): void {
    if (began_ms === null) return;
    const now_ms = performance.now();
    const since_ms = now_ms - began_ms;
    const isMishap = since_ms > mishapFrom_ms && since_ms < mishapFrom_ms + mishapLasts_ms;
    if (mishap === 'disconnect' && isMishap && !hasCut) {
      socket?.destroy();
      socket = null;
      hasCut = true;
    }
    const isSilent = mishap === 'stall' && isMishap;
    const parts: Buffer[] = [];
    for (; made < since_ms; made++) {
      if (isSilent || !socket || socket.destroyed) continue;
      const { text, isGarbled } = lineOf(made, isMishap, since_ms);
      parts.push(text);
      sent.set(made, { at_ms: now_ms, isGarbled });
    }
    // Cut anywhere, as a network does.
    const all = Buffer.concat(parts);
    const cut = Math.floor(draw() * all.length);
    if (all.length > 0) socket?.write(all.subarray(0, cut));
    if (all.length > 0) socket?.write(all.subarray(cut));
  }
  const timer = setInterval(tick, 1);
  const address = server.address();
  return {
    port: typeof address === 'object' && address ? address.port : 0,
    sent,
    began_ms: () => began_ms,
    mishapEnd_ms: mishapFrom_ms + mishapLasts_ms,
    stop() {
      clearInterval(timer);
      socket?.destroy();
      server.close();
    },
  };
}
