import { parentPort, workerData } from 'node:worker_threads';
import { isInputError } from '@provinghouse/core';
import { StoreError } from '@provinghouse/store';
import type { Progress } from './effects.ts';
import type { ThreadMessage } from './in-thread.ts';

/** Inside a thread: does the work on what `inThread` handed over and answers once, with a result or with a fault that has a code. */
export async function answerInThread<Input, Result>(
  work: (input: Input, progress: Progress) => Result | Promise<Result>,
): Promise<void> {
  const send = (message: ThreadMessage<Result>) => parentPort?.postMessage(message);
  try {
    const input = workerData as Input; // whoever starts the thread hands over nothing else
    send({
      kind: 'result',
      result: await work(input, (label, done, total) => send({ kind: 'progress', label, done, total })),
    });
  } catch (error) {
    if (isInputError(error)) send({ kind: 'fault', of: 'input', ...toldOf(error), code: error.code });
    else if (error instanceof StoreError) send({ kind: 'fault', of: 'store', ...toldOf(error), code: error.code });
    else throw error;
  }
}

function toldOf({
  message,
  context,
}: {
  readonly message: string;
  readonly context: Readonly<Record<string, unknown>>;
}) {
  return { message, context };
}
