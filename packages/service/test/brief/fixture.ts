import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { bringIn, judgeCampaign, openRecord } from '../../src/index.ts';

const demo = fileURLToPath(new URL('../../../../examples/sallow-reach', import.meta.url));

/** The finding of the demo campaign, judged once. */
export async function demoFinding(): Promise<CampaignFinding> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-brief-'));
  const record = await openRecord({ home });
  try {
    const { campaign } = await bringIn({ path: demo, who: 'tester', why: 'to be planned' }, record.effects);
    return await judgeCampaign({ campaign }, record.effects);
  } finally {
    await record.close();
    await rm(home, { recursive: true, force: true });
  }
}

/** The campaign as it stood before its first pull. */
export function unpulled(finding: CampaignFinding): CampaignFinding {
  const none = { n: 0, mean: null, sd: null, cov_pct: null, least: null, greatest: null };
  return {
    ...finding,
    pieces: finding.pieces.map((piece) => ({ ...piece, pull: null })),
    products: finding.products.map((product) => ({
      ...product,
      breakingForce: { ...product.breakingForce, ...none, atLeast: [], excluded: [] },
      judgements: [],
    })),
  };
}

/** The same product with another number of pieces prepared. */
export function withPieces(product: ProductFinding, count: number): ProductFinding {
  return { ...product, pieces: Array.from({ length: count }, (_, index) => `${product.product}-${index + 1}`) };
}
