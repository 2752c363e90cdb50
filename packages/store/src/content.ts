import { type CampaignRows, type TableName, tables } from '@provinghouse/contract';
import { canonicalJson, type Json, sha256 } from './canonical.ts';

/**
 * One hash for all that a campaign holds: SHA-256 over the canonical JSON of its rows and of the hashes of its files.
 * Two packages that say the same have the same content, however their files are written.
 */
export function contentHash(rows: CampaignRows, files: Readonly<Record<string, string>>): string {
  const names = Object.keys(tables) as TableName[];
  // A row holds cell values only, which are JSON.
  const content = Object.fromEntries(names.map((name) => [name, rows[name] as unknown as Json]));
  return sha256(canonicalJson({ rows: content, files }));
}
