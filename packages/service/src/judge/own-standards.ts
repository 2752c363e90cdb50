import { type OwnStandard, parseOwnStandard } from '@provinghouse/core';
import { attachments, type Database, readBlob } from '@provinghouse/store';

/**
 * The own specifications of a campaign, by path: those it is judged by. None of the bench is among them, for a finding follows from the
 * campaign alone; one of the bench goes into the campaign with the product that is claimed by it.
 */
export async function ownStandardsOf(campaign: string, store: Database): Promise<OwnStandard[]> {
  const files = (await attachments(store, campaign)).filter(({ path }) => path.startsWith('specifications/'));
  return Promise.all(
    files.map(async ({ path, sha256 }) =>
      parseOwnStandard(JSON.parse(new TextDecoder().decode(await readBlob(store, sha256))), path),
    ),
  );
}
