import { Worker } from 'node:worker_threads';
import { InputError } from '@provinghouse/core';
import { StoreError, type StoreErrorCode } from '@provinghouse/store';
import type { Effects } from './effects.ts';

interface Told {
  readonly message: string;
  readonly context: Readonly<Record<string, unknown>>;
}

/** What a thread says: how far it is, and then its one answer. */
export type ThreadMessage<Result> =
  | { readonly kind: 'progress'; readonly label: string; readonly done: number; readonly total: number }
  | { readonly kind: 'result'; readonly result: Result }
  | ({ readonly kind: 'fault'; readonly of: 'input'; readonly code: string } & Told)
  | ({ readonly kind: 'fault'; readonly of: 'store'; readonly code: StoreErrorCode } & Told);

/**
 * Does a work in a thread of its own, so that whoever asked goes on answering meanwhile. The script answers by `answerInThread`. `signal` ends
 * the thread at once and rejects with its reason. An InputError or a StoreError of the thread rejects as itself.
 */
export function inThread<Result>(
  script: URL,
  input: unknown,
  { progress, signal }: Pick<Effects, 'progress' | 'signal'>,
): Promise<Result> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(signal.reason);
    const worker = new Worker(script, { workerData: input });
    const cancel = () => {
      void worker.terminate().then(() => reject(signal?.reason));
    };
    signal?.addEventListener('abort', cancel, { once: true });
    worker.on('message', (message: ThreadMessage<Result>) => {
      if (message.kind === 'progress') progress(message.label, message.done, message.total);
      if (message.kind === 'result') resolve(message.result);
      if (message.kind === 'fault') reject(faultOf(message));
    });
    worker.on('error', reject);
    worker.on('exit', (code) => {
      signal?.removeEventListener('abort', cancel);
      if (!signal?.aborted) reject(new Error(`the thread ended with ${code} before it answered`));
    });
  });
}

function faultOf(fault: Extract<ThreadMessage<never>, { readonly kind: 'fault' }>): Error {
  const { message, context } = fault;
  return fault.of === 'input'
    ? new InputError(fault.code, message, context)
    : new StoreError(fault.code, message, { context });
}
