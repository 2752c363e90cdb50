import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rowWith } from '@provinghouse/contract';
import { entryPorts, recordPorts, startServer } from '@provinghouse/server';
import { type Effects, openRecord } from '@provinghouse/service';
import { commission, enterRows, freezePlan } from '@provinghouse/service/entry';
import type { DemoServer } from './demo-server.ts';

/** The campaign of this bench: invented, its plan frozen, nothing pulled. */
export const benchCampaign = 'QUAY-1';

/** Another one on the same bench, whose plan nobody has frozen. */
export const unplanned = 'QUAY-2';

export const pieces = ['ASH-8-1', 'ASH-8-2', 'ASH-8-3', 'BIRCH-8-1', 'BIRCH-8-2', 'BIRCH-8-3'];

const who = 'wren';

export interface PullsBench extends DemoServer {
  readonly effects: Effects;
}

/** Serves a bench with two products of three pieces each, ready to be pulled. */
export async function servePullsBench(): Promise<PullsBench> {
  const home = await mkdtemp(join(tmpdir(), 'provinghouse-pulls-'));
  const record = await openRecord({ home });
  const { effects } = record;
  await fill(benchCampaign, effects);
  await freezePlan(benchCampaign, { who, why: 'planned' }, effects);
  await fill(unplanned, effects);
  const webRoot = process.env.PROVINGHOUSE_SCREENS;
  const server = await startServer({
    ports: recordPorts(effects),
    entries: entryPorts(effects),
    port: 0,
    ...(webRoot === undefined ? {} : { webRoot }),
  });
  return {
    address: server.address,
    effects,
    close: async () => {
      await server.close();
      await record.close();
      await rm(home, { recursive: true });
    },
  };
}

async function fill(code: string, effects: Effects): Promise<void> {
  const campaign = rowWith('campaign', {
    campaign: code,
    title: 'Chain for a quay (invented)',
    question: 'Is it as strong as its mark says?',
    opened_on: '2026-03-02',
    decision_rule: 'guarded acceptance',
    coverage_factor: 2,
    pieces_per_product: 3,
    order_seed: 11,
    marking: 'invented test data',
  });
  await commission({ campaign, who }, effects);
  const named = (name: string) => ({ nominal_size_mm: 8, specification: 'en-818-3', grade: '4', supplier: name });
  const rig = { kind: 'rig', unit: 'kN', resolution: 0.01, range_minimum: 5, range_maximum: 100, class: 1 };
  const certificate = { calibrated_on: '2026-01-12', due_on: '2028-01-12' };
  const rows = {
    people: [rowWith('people', { person: who, name: 'W. Wren (invented)' })],
    instruments: ['RIG-1', 'RIG-2'].map((instrument) => rowWith('instruments', { instrument, ...rig })),
    calibrations: [rowWith('calibrations', { calibration: 'C-1', instrument: 'RIG-1', ...certificate })],
    products: [
      rowWith('products', { product: 'ASH-8', ...named('Ash') }),
      rowWith('products', { product: 'BIRCH-8', ...named('Birch') }),
    ],
    samples: ['ASH-8', 'BIRCH-8'].map((product) =>
      rowWith('samples', { sample: `${product}-S1`, product, received_on: '2026-03-05' }),
    ),
    pieces: pieces.map((piece) => rowWith('pieces', { piece, sample: `${piece.slice(0, -2)}-S1`, links: 5 })),
  };
  await enterRows(code, { rows, who }, effects);
}
