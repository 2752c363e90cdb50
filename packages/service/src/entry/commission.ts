import {
  type CampaignRows,
  type CommissionRequest,
  type Kept,
  readCell,
  rowFaults,
  type TableName,
  tables,
  writeCell,
} from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { bringInCampaign, campaignCodes, ledgerHead } from '@provinghouse/store';
import type { Effects } from '../effects.ts';

/**
 * Opens a new campaign with its question and its decision rule, and nothing else yet.
 * @throws InputError `campaign/taken`, `campaign/faults`
 */
export async function commission({ campaign, who }: CommissionRequest, effects: Effects): Promise<Kept> {
  const { store, now } = effects;
  const code = campaign.campaign;
  const faults = faultsOf(campaign);
  if (faults.length > 0)
    throw new InputError('campaign/faults', `The campaign cannot be opened: ${faults.join('; ')}.`);
  // Two people may have thought of the same code; the letters' case is no difference anybody would hear.
  const taken = (await campaignCodes(store)).find((one) => one.toLowerCase() === code.toLowerCase());
  if (taken !== undefined)
    throw new InputError('campaign/taken', `The record holds a campaign ${taken} already. Choose another code.`, {
      code,
    });
  const empty = Object.fromEntries((Object.keys(tables) as TableName[]).map((name) => [name, []]));
  // One list for each table, by the line above.
  const rows = { ...empty, campaign: [campaign] } as unknown as CampaignRows;
  await bringInCampaign(store, {
    rows,
    files: new Map(),
    who,
    at: now().toISOString(),
    why: 'the campaign was opened',
  });
  return { ledgerSeq: (await ledgerHead(store, code)).head_seq };
}

function faultsOf(campaign: CommissionRequest['campaign']): string[] {
  const cells: Readonly<Record<string, string | number | boolean | null>> = campaign;
  const ofCells = Object.entries(tables.campaign.fields).flatMap(([name, field]) => {
    const reading = readCell(field, writeCell(cells[name] ?? null));
    return reading.ok ? [] : [`${name} ${reading.fault}`];
  });
  return [...ofCells, ...rowFaults('campaign', campaign).map(({ column, fault }) => `${column} ${fault}`)];
}
