import type { KitInCampaign, KitInCampaigns } from '@provinghouse/contract';
import { benchBook, campaignCodes } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { campaignOf, rowsOf } from '../entry/book.ts';

/** Instruments that campaigns hold and the book of the bench does not, as they came in with data packages. */
export async function kitInCampaigns({ store }: Pick<Effects, 'store'>): Promise<KitInCampaigns> {
  const own = new Set((await rowsOf(store, benchBook, 'instruments')).map(({ instrument }) => instrument));
  const found = new Map<string, KitInCampaign>();
  for (const code of await newestLast(store)) {
    const calibrations = await rowsOf(store, code, 'calibrations');
    for (const instrument of await rowsOf(store, code, 'instruments')) {
      const name = instrument.instrument;
      if (own.has(name)) continue;
      found.set(name, {
        instrument,
        calibrations: calibrations.filter((row) => row.instrument === name),
        campaigns: [...(found.get(name)?.campaigns ?? []), code],
      });
    }
  }
  return { instruments: [...found.values()] };
}

async function newestLast(store: Effects['store']): Promise<string[]> {
  const dated = await Promise.all(
    (await campaignCodes(store)).map(async (code) => ({ code, on: (await campaignOf(store, code))?.opened_on ?? '' })),
  );
  return dated.sort((a, b) => (a.on < b.on ? -1 : 1)).map(({ code }) => code);
}
