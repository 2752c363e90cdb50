import type { KeptAs } from '@provinghouse/contract';
import { type Database, heldRows } from '@provinghouse/store';

/** The pulls of the record whose recording has these very bytes; the campaign's own come first. */
export async function keptAs(sha256: string, campaign: string, store: Database): Promise<KeptAs[]> {
  const held = await store
    .selectFrom('attachment')
    .select(['campaign', 'path'])
    .where('sha256', '=', sha256)
    .where('path', 'like', 'traces/%')
    .orderBy('campaign')
    .orderBy('path')
    .execute();
  const found: KeptAs[] = [];
  for (const of of new Set(held.map((one) => one.campaign))) {
    const paths = new Set(held.filter((one) => one.campaign === of).map(({ path }) => path));
    const { rows } = await heldRows(store, {
      campaign: of,
      kind: 'pulls',
      after: -1,
      limit: Number.MAX_SAFE_INTEGER - 1,
    });
    for (const { body } of rows)
      if (body.trace !== null && paths.has(body.trace))
        found.push({ campaign: of, pull: body.pull, piece: body.piece });
  }
  return found.sort((a, b) => Number(b.campaign === campaign) - Number(a.campaign === campaign));
}
