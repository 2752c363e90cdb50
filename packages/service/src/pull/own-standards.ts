import { type OwnStandard, parseOwnStandard } from '@provinghouse/core';
import { attachments, type Database, readBlob } from '@provinghouse/store';

/** The own specifications of a campaign, without reading its recordings. */
export async function ownStandardsOf(campaign: string, store: Database): Promise<OwnStandard[]> {
  const files = (await attachments(store, campaign)).filter(({ path }) => path.startsWith('specifications/'));
  return Promise.all(
    files.map(async ({ path, sha256 }) =>
      parseOwnStandard(JSON.parse(new TextDecoder().decode(await readBlob(store, sha256))), path),
    ),
  );
}
