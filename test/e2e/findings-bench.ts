import { type Row, rowWith } from '@provinghouse/contract';
import { type EmptyBench, serveEmpty } from './empty-bench.ts';
import { post } from './gauging-bench.ts';

/** How far an invented campaign has come. */
export type Stage = 'nothing' | 'products' | 'pieces' | 'pulls' | 'breaks';

const stages: readonly Stage[] = ['nothing', 'products', 'pieces', 'pulls', 'breaks'];
const who = 'wren';

/** A bench with a campaign at each stage, and a blind one whose plan is frozen. Everything is invented. */
export async function serveStages(): Promise<EmptyBench> {
  const bench = await serveEmpty();
  try {
    for (const stage of stages) await fill(bench.address, codeOf(stage), stage, 'open');
    await fill(bench.address, blindCampaign, 'pieces', 'blind');
    await freeze(bench.address, blindCampaign);
    return bench;
  } catch (fault) {
    await bench.close();
    throw fault;
  }
}

export const blindCampaign = 'QUAY-BLIND';

export const suppliers = ['Ash Forge (invented)', 'Birch Forge (invented)'];

export function codeOf(stage: Stage): string {
  return `QUAY-${stage.toUpperCase()}`;
}

async function fill(address: string, code: string, stage: Stage, blinding: 'open' | 'blind'): Promise<void> {
  const campaign = rowWith('campaign', {
    campaign: code,
    title: 'Chain for a quay (invented)',
    question: 'Is it as strong as its mark says?',
    opened_on: '2026-03-02',
    decision_rule: 'guarded acceptance',
    coverage_factor: 2,
    pieces_per_product: 2,
    order_seed: 11,
    marking: 'invented test data',
    blinding,
  });
  await post(`${address}/api/campaigns`, { who, campaign });
  const records = `${address}/api/campaigns/${code}/records`;
  for (const rows of rowsBy(stages.indexOf(stage))) {
    if ('pulls' in rows) await freeze(address, code);
    await post(records, { who, rows });
  }
}

/** The plan stands on record before the first pull. */
function freeze(address: string, code: string): Promise<void> {
  return post(`${address}/api/campaigns/${code}/plan/freeze`, { who, why: 'planned (invented)' });
}

/** What is entered from the first stage to the last, each building on those before. */
function rowsBy(reached: number): readonly object[] {
  const codes = ['ASH-8', 'BIRCH-8'];
  // Codes that tell nothing, as a blind campaign asks.
  const pieces = [1, 2, 3, 4].map((at) => ({ piece: `T-${at}`, sample: `${codes[at % 2]}-S1` }));
  const pulls = pieces.map(({ piece }, at) => pullOf(piece, at));
  const all = [
    {
      products: codes.map((product, at) =>
        rowWith('products', {
          product,
          supplier: suppliers[at] ?? '',
          nominal_size_mm: 8,
          specification: 'en-818-3',
          grade: '4',
          price_per_metre: 6.5,
          currency: 'EUR',
        }),
      ),
    },
    {
      people: [rowWith('people', { person: who, name: 'W. Wren (invented)' })],
      instruments: [
        rowWith('instruments', {
          instrument: 'RIG-1',
          kind: 'rig',
          unit: 'kN',
          resolution: 0.01,
          range_minimum: 5,
          range_maximum: 100,
          class: 1,
        }),
      ],
      calibrations: [
        rowWith('calibrations', {
          calibration: 'C-1',
          instrument: 'RIG-1',
          calibrated_on: '2026-01-12',
          due_on: '2028-01-12',
        }),
      ],
      samples: codes.map((product) =>
        rowWith('samples', { sample: `${product}-S1`, product, received_on: '2026-03-03' }),
      ),
      pieces: pieces.map((piece) => rowWith('pieces', { ...piece, links: 5, gauged_over: 'bare steel' })),
    },
    { pulls },
    {
      breaks: pulls.map(({ pull }) =>
        rowWith('breaks', { pull, link: 3, examiner: who, position: 'crown', mode: 'ductile cup-and-cone' }),
      ),
    },
  ];
  return all.slice(0, reached);
}

/** A maximum read off the panel, a little more for each piece. */
function pullOf(piece: string, at: number): Row<'pulls'> {
  return rowWith('pulls', {
    pull: `P-${at + 1}`,
    piece,
    rig: 'RIG-1',
    operator: who,
    pulled_at: `2026-03-09T1${at}:00:00Z`,
    panel_maximum_kN: 42 + at,
    panel_uncertainty_kN: 0.2,
    valid: true,
  });
}
