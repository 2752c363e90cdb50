import type { CampaignFinding } from '@provinghouse/contract';
import { attachments, readBlob } from '@provinghouse/store';
import { rowsShown } from '../blind/rows-shown.ts';
import type { Effects } from '../effects.ts';
import { assembleFinding } from './assemble.ts';
import type { Evidence, TraceFile } from './evidence.ts';
import { ownStandardsOf } from './own-standards.ts';

/**
 * Judges a campaign of the record: every piece against every limit of its specification, every product from its pieces.
 * The same record gives the same finding, to the last digit.
 * @throws InputError where the campaign's own data leave no reading (a trace with two columns that could be force, an unknown
 * specification); StoreError `store/unknown-campaign`
 */
export async function judgeCampaign(input: { readonly campaign: string }, effects: Effects): Promise<CampaignFinding> {
  return assembleFinding(await gatherEvidence(input.campaign, effects));
}

/** Rows, recordings and own specifications of a campaign, out of the record. */
export async function gatherEvidence(campaign: string, effects: Effects): Promise<Evidence> {
  const { store, progress } = effects;
  const rows = await rowsShown(campaign, effects);
  const files = await attachments(store, campaign);
  const traces = new Map<string, TraceFile>();
  const recordings = files.filter((file) => file.path.startsWith('traces/'));
  for (const [index, file] of recordings.entries()) {
    traces.set(file.path, { bytes: await readBlob(store, file.sha256), sha256: file.sha256 });
    progress('reading traces', index + 1, recordings.length);
  }
  return { rows, traces, ownStandards: await ownStandardsOf(campaign, store) };
}
