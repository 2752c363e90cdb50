import { type AddressCodec, queryPart } from '../../lib/use-address-state.ts';
import { type ChainAtHand, isQuantity, longestSheet, type Sheet, type Step } from './sheet.ts';

/** The sheet in the query of an address: `chain`, `limit`, `1` for the first calculation, `1.force_kN` for an entry of it. */
export const sheetAddress: AddressCodec<Sheet> = { read: readSheet, write: writeSheet };

function writeSheet({ chain, steps }: Sheet): string {
  const parts = chain === null ? [] : [queryPart('chain', chain.key), queryPart('limit', chain.requirement)];
  steps.forEach(({ calculation, entries }, index) => {
    parts.push(queryPart(`${index + 1}`, calculation));
    for (const [key, entry] of Object.entries(entries)) {
      if (entry.trim() !== '') parts.push(queryPart(`${index + 1}.${key}`, entry));
    }
  });
  return parts.join('&');
}

/** Reads an address in any order of its parts; numbers left out in between close up only where nothing points past them. */
function readSheet(search: string): Sheet {
  const query = new URLSearchParams(search);
  const steps: Step[] = [];
  for (let number = 1; number <= longestSheet; number += 1) {
    const calculation = query.get(`${number}`);
    if (calculation === null) break;
    const prefix = `${number}.`;
    const entries = [...query].flatMap(([name, entry]) =>
      name.startsWith(prefix) && entry.trim() !== '' ? [[name.slice(prefix.length), entry] as const] : [],
    );
    steps.push({ calculation, entries: Object.fromEntries(entries) });
  }
  return { chain: readChain(query), steps };
}

function readChain(query: URLSearchParams): ChainAtHand | null {
  const key = query.get('chain');
  if (key === null || key === '') return null;
  const limit = query.get('limit') ?? '';
  return { key, requirement: isQuantity(limit) ? limit : 'breakingForce' };
}
