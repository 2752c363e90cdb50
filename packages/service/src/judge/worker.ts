// The thread in which a finding is assembled: evidence in, finding or fault out. It is ended from outside to cancel.
import { parentPort, workerData } from 'node:worker_threads';
import { isInputError } from '@provinghouse/core';
import { assembleFinding } from './assemble.ts';
import type { Evidence } from './evidence.ts';
import type { WorkerMessage } from './in-worker.ts';

function send(message: WorkerMessage): void {
  parentPort?.postMessage(message);
}

try {
  const evidence = workerData as Evidence; // in-worker.ts hands over nothing else
  send({
    kind: 'finding',
    finding: assembleFinding(evidence, (done, total) => send({ kind: 'progress', done, total })),
  });
} catch (error) {
  if (!isInputError(error)) throw error;
  send({ kind: 'fault', code: error.code, message: error.message, context: error.context });
}
