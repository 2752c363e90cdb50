import { type CampaignRows, exampleRecords, type Row, readSheet, type TableName, tables } from '@provinghouse/contract';
import type { CampaignToBringIn } from '../src/index.ts';

/** The example rows of the table definitions, with as many gauging readings as asked for. */
export function sampleRows(code = 'SAMPLE', readings = 2): CampaignRows {
  const entries = (Object.keys(tables) as TableName[]).map((name) => {
    const { rows } = readSheet(tables[name], [Object.keys(tables[name].fields), ...exampleRecords(tables[name])]);
    return [name, rows.map(({ cells }) => cells)];
  });
  const rows = Object.fromEntries(entries) as CampaignRows;
  const [campaign, reading] = [rows.campaign[0], rows.gauging[0]];
  if (!campaign || !reading) throw new Error('the examples hold a campaign and a reading');
  const gauging: Row<'gauging'>[] = Array.from({ length: readings }, (_, i) => ({
    ...reading,
    repeat: i + 1,
    value_mm: 8 + i / 1000,
  }));
  return { ...rows, campaign: [{ ...campaign, campaign: code }], gauging };
}

/** A campaign with three files, ready to bring in. */
export function sampleCampaign(code = 'SAMPLE', readings = 2): CampaignToBringIn {
  return {
    rows: sampleRows(code, readings),
    files: new Map([
      ['traces/P-001.csv', new TextEncoder().encode('time_s,force_kN\n0,0\n')],
      ['photographs/ASH-8-1.png', Uint8Array.from([0, 1, 2, 255])],
      ['photographs/BIRCH-8-1.png', new Uint8Array(0)],
    ]),
    who: 'gauger',
    at: '2026-03-10T08:00:00.000Z',
    why: 'first bring-in',
  };
}
