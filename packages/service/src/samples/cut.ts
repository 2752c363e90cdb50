import { type CutRequest, type KeptCut, type Row, rowWith } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { type Database, heldRows, ledgerHead } from '@provinghouse/store';
import { masksNow } from '../blind/masks-now.ts';
import type { Effects } from '../effects.ts';
import { enterRows, knownCampaign, rowsOf } from '../entry/index.ts';
import { blindCodes, type Draw, openCodes } from './codes.ts';

/**
 * Cuts a sample into pieces and gives them their codes: in an open campaign SAMPLE-1, SAMPLE-2 ... going on, in a blind one by lot. Sent a
 * second time with the same number of pieces seen before, the same cutting is answered as kept.
 * @param draw gives the lot its numbers
 * @throws InputError `campaign/unknown`, `entry/sample-unknown`, `entry/cut-meanwhile`, `entry/codes-used-up`; as `enterRows`
 */
export function cutSample(campaign: string, request: CutRequest, effects: Effects & { readonly draw: Draw }) {
  return inTurn(effects.store, () => cut(campaign, request, effects));
}

/** Codes are drawn from what stands there, so two cuttings at once must not see the same. */
const turns = new WeakMap<Database, Promise<unknown>>();

function inTurn<T>(store: Database, work: () => Promise<T>): Promise<T> {
  const before = turns.get(store) ?? Promise.resolve();
  const turn = before.then(work, work);
  turns.set(store, turn);
  return turn;
}

async function cut(code: string, request: CutRequest, effects: Effects & { readonly draw: Draw }): Promise<KeptCut> {
  const campaign = await knownCampaign(effects.store, code);
  const sample = await sampleMeant(campaign, request.sample, effects);
  const kept = await keptBefore(campaign, { ...request, sample }, effects);
  if (kept) return kept;
  const codes = await newCodes(campaign, { ...request, sample }, effects);
  const pieces = codes.map((piece) =>
    rowWith('pieces', { piece, sample, links: request.links, gauged_over: request.gaugedOver, note: request.note }),
  );
  const { ledgerSeq } = await enterRows(
    code,
    { rows: { pieces }, who: request.who, why: request.why ?? null },
    effects,
  );
  return { ledgerSeq, pieces: codes };
}

/** While a campaign is blind its samples are named by their neutral names on screen, and so by whoever cuts one. */
async function sampleMeant(campaign: Row<'campaign'>, name: string, { store }: Effects): Promise<string> {
  const samples = await rowsOf(store, campaign.campaign, 'samples');
  const masks = await masksNow(campaign, store);
  const found = samples.find(({ sample }) => (masks === null ? sample : masks.samples.get(sample)) === name);
  if (found) return found.sample;
  throw new InputError(
    'entry/sample-unknown',
    `The campaign holds no sample "${name}". Receive it first, then cut it.`,
    { sample: name },
  );
}

/** The answer that was lost on its way; refuses where somebody else has cut the sample meanwhile. */
async function keptBefore(campaign: Row<'campaign'>, request: CutRequest, { store }: Effects): Promise<KeptCut | null> {
  const asked = { campaign: campaign.campaign, kind: 'pieces', after: -1, limit: Number.MAX_SAFE_INTEGER - 1 } as const;
  const own = (await heldRows(store, asked)).rows.filter(({ body }) => body.sample === request.sample);
  const since = own.slice(request.piecesBefore);
  if (own.length === request.piecesBefore) return null;
  const isThisOne =
    since.length === request.count &&
    since.every(
      ({ who, body }) =>
        who === request.who &&
        body.links === request.links &&
        body.gauged_over === request.gaugedOver &&
        body.note === request.note,
    );
  if (isThisOne)
    return {
      ledgerSeq: (await ledgerHead(store, campaign.campaign)).head_seq,
      pieces: since.map(({ body }) => body.piece),
    };
  throw new InputError(
    'entry/cut-meanwhile',
    `The sample was cut meanwhile: it has ${own.length} pieces now, and you saw ${request.piecesBefore}. Look at them, then cut again if more are wanted.`,
    { pieces: own.length },
  );
}

async function newCodes(
  campaign: Row<'campaign'>,
  { sample, count }: CutRequest,
  { store, draw }: Effects & { readonly draw: Draw },
): Promise<string[]> {
  // A blind campaign that was unblinded has nothing left to hide, but its pieces go on being named alike.
  if (campaign.blinding !== 'blind')
    return openCodes({ sample, count, used: await codesEver(store, campaign.campaign) });
  const products = await rowsOf(store, campaign.campaign, 'products');
  const samples = await rowsOf(store, campaign.campaign, 'samples');
  const telling = [...products.flatMap((row) => [row.product, row.supplier]), ...samples.map((row) => row.sample)];
  return blindCodes({ count, used: await codesEver(store, null), telling, draw });
}

/** Codes the ledger names, in one campaign or all: a code that was taken out is on a tag somewhere and is not given again. */
async function codesEver(store: Database, campaign: string | null): Promise<string[]> {
  const all = store.selectFrom('ledger').select('record').distinct().where('kind', '=', 'pieces');
  const rows = await (campaign === null ? all : all.where('campaign', '=', campaign)).execute();
  return rows.map(({ record }) => record);
}
