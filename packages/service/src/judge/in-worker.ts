import { Worker } from 'node:worker_threads';
import type { CampaignFinding } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import type { Effects } from '../effects.ts';
import type { Evidence } from './evidence.ts';

export type WorkerMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'finding'; readonly finding: CampaignFinding }
  | {
      readonly kind: 'fault';
      readonly code: string;
      readonly message: string;
      readonly context: Readonly<Record<string, unknown>>;
    };

/**
 * Assembles a finding in a thread of its own, so that whoever asked goes on answering meanwhile. `effects.signal` ends the thread at
 * once and rejects with its reason; nothing is left to clean up, because assembling writes nothing.
 */
export function assembleInWorker(
  evidence: Evidence,
  effects: Pick<Effects, 'progress' | 'signal'>,
): Promise<CampaignFinding> {
  const { signal, progress } = effects;
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(signal.reason);
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { workerData: evidence });
    const cancel = () => {
      void worker.terminate();
      reject(signal?.reason);
    };
    signal?.addEventListener('abort', cancel, { once: true });
    worker.on('message', (message: WorkerMessage) => {
      if (message.kind === 'progress') progress('judging', message.done, message.total);
      if (message.kind === 'finding') resolve(message.finding);
      if (message.kind === 'fault') reject(new InputError(message.code, message.message, message.context));
    });
    worker.on('error', reject);
    worker.on('exit', (code) => {
      signal?.removeEventListener('abort', cancel);
      reject(new Error(`the judging thread ended with ${code} before it answered`));
    });
  });
}
