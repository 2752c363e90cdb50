import { type CampaignRows, type Row, rowWith, tables } from '@provinghouse/contract';
import { seededRandom } from '@provinghouse/core';

export const longCampaign = 'LONG-BOARD';
const products = 25;
const piecesEach = 20;

/** An invented campaign of 500 pieces with panel readings, four diameters and a break each. */
export function longRows(seed = 3): CampaignRows {
  const draw = seededRandom(seed).uniform;
  const names = Array.from({ length: products }, (_, at) => `P${String(at + 1).padStart(2, '0')}`);
  const pieces = names.flatMap((product) =>
    Array.from({ length: piecesEach }, (_, at) => ({ product, piece: `${product}-${at + 1}` })),
  );
  const empty = Object.fromEntries(Object.keys(tables).map((name) => [name, []]));
  return {
    // One list for each table, by the line above; those below take their places.
    ...(empty as unknown as CampaignRows),
    campaign: [
      rowWith('campaign', {
        campaign: longCampaign,
        title: 'Five hundred pieces (invented)',
        question: 'Does the board hold five hundred pieces?',
        opened_on: '2026-03-02',
        decision_rule: 'guarded acceptance',
        coverage_factor: 2,
        marking: 'invented to measure the screens',
      }),
    ],
    people: [rowWith('people', { person: 'gauger', name: 'First person (invented)' })],
    instruments: [
      rowWith('instruments', { instrument: 'RIG-1', kind: 'rig', unit: 'kN', resolution: 0.02, class: 1 }),
      rowWith('instruments', { instrument: 'CAL-1', kind: 'calliper', unit: 'mm', resolution: 0.01 }),
    ],
    products: names.map((product) =>
      rowWith('products', {
        product,
        supplier: `Invented ${product}`,
        nominal_size_mm: 8,
        specification: 'en-818-3',
        grade: '4',
      }),
    ),
    samples: names.map((product) => rowWith('samples', { sample: `${product}-S`, product, received_on: '2026-03-03' })),
    pieces: pieces.map(({ product, piece }) => rowWith('pieces', { piece, sample: `${product}-S`, links: 5 })),
    gauging: pieces.flatMap(({ piece }) => diameters(piece, draw)),
    pulls: pieces.map(({ piece }) =>
      rowWith('pulls', {
        pull: `PULL-${piece}`,
        piece,
        rig: 'RIG-1',
        panel_maximum_kN: Number((38 + 10 * draw()).toFixed(2)),
        panel_uncertainty_kN: 0.2,
        valid: true,
      }),
    ),
    breaks: pieces.map(({ piece }) =>
      rowWith('breaks', {
        pull: `PULL-${piece}`,
        link: 1 + Math.floor(5 * draw()),
        examiner: 'gauger',
        position: draw() < 0.7 ? 'crown' : 'weld',
        mode: draw() < 0.8 ? 'ductile cup-and-cone' : 'weld not fused',
      }),
    ),
  };
}

function diameters(piece: string, draw: () => number): Row<'gauging'>[] {
  return [1, 2].flatMap((link) =>
    [1, 2].map((direction) =>
      rowWith('gauging', {
        piece,
        link,
        position: 'leg',
        quantity: 'diameter',
        direction,
        repeat: 1,
        value_mm: Number((7.9 + 0.2 * draw()).toFixed(2)),
        instrument: 'CAL-1',
        by: 'gauger',
      }),
    ),
  );
}
