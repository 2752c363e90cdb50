import type { CampaignFinding } from '@provinghouse/contract';
import type { Effects } from '../effects.ts';
import { inThread } from '../in-thread.ts';
import type { Evidence } from './evidence.ts';

/**
 * Assembles a finding in a thread of its own, so that whoever asked goes on answering meanwhile. `effects.signal` ends the thread at
 * once and rejects with its reason; nothing is left to clean up, because assembling writes nothing.
 */
export function assembleInWorker(
  evidence: Evidence,
  effects: Pick<Effects, 'progress' | 'signal'>,
): Promise<CampaignFinding> {
  return inThread<CampaignFinding>(new URL('./worker.ts', import.meta.url), evidence, effects);
}
