import type { CampaignRows, ReaderAgreement } from '@provinghouse/contract';
import { cohenKappa, fleissKappa, type Kappa } from '@provinghouse/core';

/** How far the examiners agree on the links they read both; null when no link was read twice. */
export function agreementOf({ breaks }: CampaignRows): ReaderAgreement | null {
  const links = [...Map.groupBy(breaks, (row) => `${row.pull}/${row.link}`).values()];
  if (!links.some((rows) => rows.length > 1)) return null;
  const readers = [...new Set(breaks.map((row) => row.examiner))].sort();
  const kappa = (word: (row: (typeof breaks)[number]) => string): Kappa =>
    agreement(
      readers,
      links.map((rows) => new Map(rows.map((row) => [row.examiner, word(row)]))),
    );
  return { readers, position: kappa((row) => row.position), mode: kappa((row) => row.mode) };
}

/** Two readers are compared as themselves (Cohen), more than two as a body (Fleiss). */
function agreement(readers: readonly string[], links: readonly ReadonlyMap<string, string>[]): Kappa {
  const [first, second, third] = readers;
  if (first !== undefined && second !== undefined && third === undefined) {
    return cohenKappa(links.map((words) => ({ first: words.get(first) ?? null, second: words.get(second) ?? null })));
  }
  return fleissKappa(links.map((words) => [...words.values()]));
}
