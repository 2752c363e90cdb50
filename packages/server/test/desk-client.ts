import assert from 'node:assert/strict';
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import type { LiveMessage, RigDesk } from '@provinghouse/contract';
import { WebSocket } from 'ws';

/** A desk running in a process of its own, spoken to over HTTP as a screen does. */
export interface DeskClient {
  readonly child: ChildProcess;
  post(order: string, body: object): Promise<RigDesk>;
  desk(): Promise<RigDesk>;
  /** Greatest force a viewer has been shown of the recording, kN. */
  shown_kN(): number;
  /** Words of trouble a viewer was told. */
  troubles(): readonly string[];
  kill(): Promise<number>;
}

const script = fileURLToPath(new URL('./desk-process.ts', import.meta.url));

/** Starts a desk over the record in `home` and follows the rig. */
export async function startDesk(home: string, rig: string): Promise<DeskClient> {
  const env = { ...process.env, PROVINGHOUSE_HOME: home };
  const child = spawn(process.execPath, [script], { env, stdio: ['ignore', 'pipe', 'inherit'] });
  const [address] = (await once(createInterface(child.stdout), 'line')) as [string];
  const url = `${address}/api/rigs/${rig}`;
  const troubles: string[] = [];
  let shown_kN = 0;
  const socket = new WebSocket(`${url.replace('http', 'ws')}/live`);
  socket.on('error', () => undefined);
  socket.on('message', (data) => {
    const message = JSON.parse(String(data)) as LiveMessage;
    if (message.kind === 'trouble') troubles.push(message.words);
    if (message.kind === 'samples' && message.received > 0)
      shown_kN = Math.max(shown_kN, ...message.samples.map((sample) => sample.force_kN));
  });
  await once(socket, 'open');
  const answer = async (reply: Response): Promise<RigDesk> => {
    const said = await reply.text();
    assert.equal(reply.status, 200, said);
    return JSON.parse(said) as RigDesk; // the server of this build sends the shape of the contract
  };
  const headers = { 'content-type': 'application/json' };
  return {
    child,
    post: async (order, body) =>
      answer(await fetch(`${url}/${order}`, { method: 'POST', headers, body: JSON.stringify(body) })),
    desk: async () => answer(await fetch(url)),
    shown_kN: () => shown_kN,
    troubles: () => troubles,
    kill: async () => {
      const gone = once(child, 'exit');
      const at_ms = performance.now();
      child.kill('SIGKILL');
      await gone;
      return at_ms;
    },
  };
}
