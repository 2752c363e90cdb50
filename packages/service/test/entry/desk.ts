import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'node:test';
import { type Row, rowWith } from '@provinghouse/contract';
import { commission, enterRows } from '../../src/entry/index.ts';
import { type Effects, openRecord } from '../../src/index.ts';

export const code = 'QUAY-1';
export const who = 'gauger';

/** An empty record that is gone after the test, with a clock that stands still. */
export async function emptyRecord(t: TestContext, now = '2026-03-09T10:00:00.000Z'): Promise<Effects> {
  const home = mkdtempSync(join(tmpdir(), 'provinghouse-entry-'));
  const record = await openRecord({ home });
  t.after(async () => {
    await record.close();
    rmSync(home, { recursive: true, force: true });
  });
  return { ...record.effects, now: () => new Date(now) };
}

/** A campaign row as a newcomer would fill it. */
export function campaignRow(cells: Partial<Row<'campaign'>> = {}): Row<'campaign'> {
  return rowWith('campaign', {
    campaign: code,
    title: 'One chain',
    question: 'Is it as strong as its mark says?',
    opened_on: '2026-03-02',
    decision_rule: 'guarded acceptance',
    coverage_factor: 2,
    ...cells,
  });
}

export const product = rowWith('products', {
  product: 'ASH-8',
  supplier: 'Ash',
  description: '8 mm short-link chain (invented)',
  nominal_size_mm: 8,
  specification: 'en-818-3',
  grade: '4',
  price_per_metre: 6.437,
  currency: 'EUR',
});
export const sample = rowWith('samples', { sample: 'ASH-8-S1', product: 'ASH-8', received_on: '2026-03-05' });
export const person = rowWith('people', { person: 'gauger', name: 'First person (invented)' });
export const rig = rowWith('instruments', { instrument: 'RIG-1', kind: 'rig', unit: 'kN', resolution: 0.02, class: 1 });
export const calliper = rowWith('instruments', { instrument: 'CAL-1', kind: 'calliper', unit: 'mm', resolution: 0.01 });
export const rigCertificate = rowWith('calibrations', {
  calibration: 'C-1',
  instrument: 'RIG-1',
  calibrated_on: '2026-01-12',
  due_on: '2027-01-12',
});
export const calliperCertificate = rowWith('calibrations', {
  calibration: 'C-2',
  instrument: 'CAL-1',
  calibrated_on: '2025-01-12',
  due_on: '2026-01-12',
});

/** A campaign with its claim, its kit and one sample; the certificate of the calliper has run out. */
export async function prepared(t: TestContext, cells: Partial<Row<'campaign'>> = {}): Promise<Effects> {
  const effects = await emptyRecord(t);
  await commission({ campaign: campaignRow({ pieces_per_product: 2, order_seed: 7, ...cells }), who }, effects);
  const rows = {
    people: [person],
    instruments: [rig, calliper],
    calibrations: [rigCertificate, calliperCertificate],
    products: [product],
    samples: [sample],
  };
  await enterRows(code, { rows, who }, effects);
  return effects;
}

export const piece = (name: string) => rowWith('pieces', { piece: name, sample: 'ASH-8-S1', links: 5 });

export const reading = (name: string, value_mm: number) =>
  rowWith('gauging', {
    piece: name,
    link: 1,
    position: 'leg',
    quantity: 'diameter',
    direction: 1,
    repeat: 1,
    value_mm,
    instrument: 'CAL-1',
    by: 'gauger',
    read_at: '2026-03-09T09:00:00Z',
  });

export const pull = (name: string, of: string) =>
  rowWith('pulls', {
    pull: name,
    piece: of,
    rig: 'RIG-1',
    panel_maximum_kN: 36.4,
    panel_uncertainty_kN: 0.2,
    valid: true,
  });
