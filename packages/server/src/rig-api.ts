import { type ArmInput, cautions, type GoOnInput, type RigDesk, type WireTestMessage } from '@provinghouse/contract';
import { isInputError } from '@provinghouse/core';
import type { FastifyInstance } from 'fastify';
import type { WebSocket } from 'ws';
import { answers } from './answer-schema.ts';
import { refuseOtherOrigins } from './origin-check.ts';
import { ProblemError } from './problem.ts';
import type { RigPorts, RigViewer, WireTestViewer } from './rig-ports.ts';

interface RigAddress {
  readonly Params: { readonly rig: string };
}

const name = { type: 'string', minLength: 1, maxLength: 200 };
const params = { type: 'object', properties: { rig: name }, required: ['rig'] };
const nothing = { type: 'object', properties: {}, additionalProperties: false };
const acknowledged = { type: 'array', items: { type: 'string', enum: [...cautions] }, maxItems: cautions.length };
const armBody = {
  type: 'object',
  properties: {
    campaign: { type: 'string', pattern: '^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$' },
    piece: name,
    confirmed: { type: 'string', maxLength: 200 },
    operator: { type: ['string', 'null'], maxLength: 200 },
    cautions: acknowledged,
  },
  required: ['campaign', 'piece', 'confirmed', 'operator', 'cautions'],
  additionalProperties: false,
};
const markBody = {
  type: 'object',
  properties: { words: { type: 'string', minLength: 1, maxLength: 500 } },
  required: ['words'],
  additionalProperties: false,
};
const goOnBody = {
  type: 'object',
  properties: { spool: name, confirmed: { type: 'string', maxLength: 200 }, cautions: acknowledged },
  required: ['spool', 'confirmed', 'cautions'],
  additionalProperties: false,
};
const recoverBody = { type: 'object', properties: { spool: name }, required: ['spool'], additionalProperties: false };

/** The rig over HTTP: what stands on it, and what an operator says to it. */
export function addRigApi(app: FastifyInstance, ports: RigPorts): void {
  const act = (body: object) => ({
    schema: { params, body, response: { 200: answers.desk } },
    onRequest: refuseOtherOrigins,
    bodyLimit: 16 * 1024,
  });
  const answered = (answer: object) => ({ schema: { response: { 200: answer } } });
  app.get('/api/rigs', answered(answers.rigs), () => ports.rigs());
  app.get<RigAddress>(
    '/api/rigs/:rig',
    { schema: { params, response: { 200: answers.desk } } },
    async ({ params: { rig } }) => known(await ports.desk(rig), rig),
  );
  app.post<RigAddress & { readonly Body: ArmInput }>(
    '/api/rigs/:rig/arm',
    act(armBody),
    async ({ params: { rig }, body }) => known(await ports.arm(rig, body), rig),
  );
  app.post<RigAddress>('/api/rigs/:rig/start', act(nothing), async ({ params: { rig } }) =>
    known(await ports.start(rig), rig),
  );
  app.post<RigAddress>('/api/rigs/:rig/stop', act(nothing), async ({ params: { rig } }) =>
    known(await ports.stop(rig), rig),
  );
  app.post<RigAddress & { readonly Body: { readonly words: string } }>(
    '/api/rigs/:rig/mark',
    act(markBody),
    async ({ params: { rig }, body }) => known(await ports.mark(rig, body.words), rig),
  );
  app.post<RigAddress & { readonly Body: { readonly spool: string } }>(
    '/api/rigs/:rig/recover',
    act(recoverBody),
    async ({ params: { rig }, body }) => known(await ports.recover(rig, body.spool), rig),
  );
  app.post<RigAddress & { readonly Body: GoOnInput }>(
    '/api/rigs/:rig/go-on',
    act(goOnBody),
    async ({ params: { rig }, body }) => known(await ports.goOn(rig, body), rig),
  );
  app.get<RigAddress>(
    '/api/rigs/:rig/live',
    { websocket: true, schema: { params }, onRequest: refuseOtherOrigins },
    (socket, { params: { rig } }) => void follow(socket, () => ports.follow(rig, viewerOf(socket))),
  );
  app.get<RigAddress>(
    '/api/rigs/:rig/wires',
    { websocket: true, schema: { params }, onRequest: refuseOtherOrigins },
    (socket, { params: { rig } }) => void follow(socket, () => ports.testWires(rig, wireViewerOf(socket))),
  );
}

function known(desk: RigDesk | null, rig: string): RigDesk {
  if (desk !== null) return desk;
  throw new ProblemError('rig-unknown', `There is no rig ${rig} here. GET /api/rigs lists those there are.`);
}

/** Close codes of RFC 6455, 7.4.1: done, policy, fault, try again later. */
const closed = { done: 1000, unknown: 1008, fault: 1011, behind: 1013 } as const;

/** Joins a viewer for as long as its connection stands. A refusal is told before the connection is closed. */
async function follow(socket: WebSocket, join: () => Promise<(() => void) | null>): Promise<void> {
  // A viewer has nothing to say; what it says all the same is not kept.
  socket.on('error', () => socket.terminate());
  let isGone = false;
  let leave: (() => void) | null = null;
  socket.on('close', () => {
    isGone = true;
    leave?.();
  });
  try {
    leave = await join();
  } catch (error) {
    if (isInputError(error)) {
      const refused: WireTestMessage = { kind: 'refused', code: error.code, words: error.message };
      socket.send(JSON.stringify(refused));
      socket.close(closed.done, 'refused');
      return;
    }
    socket.close(closed.fault, 'the rig cannot be followed now');
    return;
  }
  if (leave === null) socket.close(closed.unknown, 'no such rig');
  else if (isGone) leave();
}

function viewerOf(socket: WebSocket): RigViewer {
  return {
    send: (message) => socket.send(JSON.stringify(message)),
    backlog: () => socket.bufferedAmount,
    drop: () => socket.close(closed.behind, 'too far behind'),
  };
}

function wireViewerOf(socket: WebSocket): WireTestViewer {
  return {
    send: (message) => socket.send(JSON.stringify(message)),
    backlog: () => socket.bufferedAmount,
    drop: () => socket.close(closed.done, 'over'),
  };
}
