import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Row, type RowsHeld, rowWith, type TableName } from '@provinghouse/contract';
import { entryPorts, recordPorts, startServer } from '@provinghouse/server';
import { openRecord } from '@provinghouse/service';

/** A bench whose server can be stopped and started again on the same port, over the same record. */
export interface GaugingBench {
  readonly address: string;
  start(): Promise<void>;
  stop(): Promise<void>;
  close(): Promise<void>;
}

export async function openGaugingBench(): Promise<GaugingBench> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-gauging-'));
  const webRoot = process.env.PROVINGHOUSE_SCREENS;
  let port = 0;
  let stop = async () => {};
  let address = '';
  const start = async () => {
    const record = await openRecord({ home });
    const server = await startServer({
      ports: recordPorts(record.effects),
      entries: entryPorts(record.effects),
      port,
      ...(webRoot === undefined ? {} : { webRoot }),
    });
    address = server.address;
    port = Number(new URL(address).port);
    stop = async () => {
      await server.close();
      await record.close();
    };
  };
  await start();
  return {
    address,
    start,
    stop: () => stop(),
    close: async () => {
      await stop();
      await rm(home, { recursive: true });
    },
  };
}

export async function post(url: string, body: object): Promise<void> {
  const headers = { 'content-type': 'application/json' };
  const reply = await fetch(url, { method: 'POST', headers, body: JSON.stringify(body) });
  if (!reply.ok) throw new Error(`${url}: ${reply.status} ${await reply.text()}`);
}

/** The days of a certificate from and to a number of days from today. */
function certificate(
  calibration: string,
  instrument: string,
  [from, to]: readonly [number, number],
): Row<'calibrations'> {
  const day = (by: number) => new Date(Date.now() + by * 86_400_000).toISOString().slice(0, 10);
  return rowWith('calibrations', {
    calibration,
    instrument,
    calibrated_on: day(from),
    due_on: day(to),
    expanded_uncertainty: 0.02,
    coverage_factor: 2,
  });
}

interface InventedCampaign {
  readonly code: string;
  readonly pieces: number;
  readonly links: number;
  readonly blinding?: 'open' | 'blind';
}

/** An invented campaign with so many pieces of 8 mm chain; two callipers stand at the bench, one of them without a certificate in force. */
export async function openCampaign(
  address: string,
  { code, pieces, links, blinding = 'open' }: InventedCampaign,
): Promise<readonly string[]> {
  const who = 'wren';
  const calliper = (instrument: string) =>
    rowWith('instruments', { instrument, kind: 'calliper', unit: 'mm', resolution: 0.01 });
  await post(`${address}/api/bench/records`, {
    who,
    rows: {
      instruments: [calliper('CAL-1'), calliper('CAL-OLD')],
      calibrations: [certificate('C-1', 'CAL-1', [-30, 300]), certificate('C-OLD', 'CAL-OLD', [-800, -400])],
    },
  });
  await post(`${address}/api/campaigns`, {
    who,
    campaign: rowWith('campaign', {
      campaign: code,
      title: 'Invented campaign for a test',
      question: 'Is it as thick as it says?',
      opened_on: '2026-03-02',
      decision_rule: 'simple acceptance',
      coverage_factor: 2,
      marking: 'invented',
      blinding,
      pieces_per_product: pieces,
      order_seed: 7,
    }),
  });
  const names = Array.from({ length: pieces }, (_, at) => `P-${at + 1}`);
  await post(`${address}/api/campaigns/${code}/records`, {
    who,
    rows: {
      products: [
        rowWith('products', {
          product: 'ASH-8',
          supplier: 'Ash (invented)',
          nominal_size_mm: 8,
          specification: 'en-818-3',
          grade: '4',
        }),
      ],
      samples: [rowWith('samples', { sample: 'ASH-8-S1', product: 'ASH-8', received_on: '2026-03-03' })],
      pieces: names.map((piece) => rowWith('pieces', { piece, sample: 'ASH-8-S1', links, gauged_over: 'bare steel' })),
    },
  });
  return names;
}

export async function rowsKept<T extends TableName>(
  address: string,
  code: string,
  kind: T,
): Promise<RowsHeld<T>['rows']> {
  const reply = await fetch(`${address}/api/campaigns/${code}/records/${kind}?limit=1000`);
  const held = (await reply.json()) as RowsHeld<T>; // the server of this build sends the shape of the contract
  return held.rows;
}

/** Numbers from 0 to 1 in an order that a seed fixes (a linear congruence; Numerical Recipes, 2nd edition, section 7.1). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
