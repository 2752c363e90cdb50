import { type CampaignFinding, type PieceFinding, type ProductFinding, rowWith } from '@provinghouse/contract';
import { compareGroups, valueForMoney } from '@provinghouse/core';
import type { ReportDocument } from '../src/index.ts';
import { makeProduct, valuesOf } from './fixture/product.ts';
import { curveOf } from './fixture/pull.ts';
import type { FixtureShape } from './fixture/shape.ts';

/** A campaign of the shape asked for, the same on every call: one grip break, one clipped pull, one doubtful reading of a break. */
export function fixture(shape: FixtureShape): ReportDocument {
  const parts = Array.from({ length: shape.products }, (_, index) => makeProduct(index, shape));
  const pieces = parts.flatMap((part) => part.pieces);
  const curves = pieces.flatMap((piece, index) => (piece.pull === null ? [] : [curveOf(piece.pull.pull, index)]));
  return {
    finding: makeFinding(
      parts.map((part) => part.product),
      pieces,
      shape,
    ),
    curves: Object.fromEntries(curves.map((curve) => [curve.pull, curve])),
    issuedOn: '2026-04-01',
    software: 'Provinghouse fixture',
    recordHead: '0123456789abcdef'.repeat(4),
  };
}

const certificate = { calibration: 'C-1001', instrument: 'RIG-1', calibrated_on: '2026-01-12', due_on: '2027-01-12' };

function makeFinding(
  products: readonly ProductFinding[],
  pieces: readonly PieceFinding[],
  shape: FixtureShape,
): CampaignFinding {
  return {
    campaign: rowWith('campaign', {
      campaign: 'FIXTURE-1',
      title: 'Invented chain for a made-up mooring',
      question: 'Is this chain as strong as its mark says?',
      client: 'The invented co-operative',
      laboratory: 'Made-up test room, shed 2',
      opened_on: '2026-03-02',
      decision_rule: 'guarded acceptance',
      coverage_factor: 2,
      method: 'Straight pull in shackles, table speed set by hand.',
      sampling: 'One length of each, bought over the counter.',
      table_speed_min_mm_per_min: 10,
      table_speed_max_mm_per_min: 60,
      marking: 'invented demonstration data',
    }),
    rule: 'guarded acceptance',
    ruleSentence: 'A value conforms when it clears the limit by its expanded uncertainty; between, nothing is decided.',
    people: [
      rowWith('people', { person: 'gauger', name: 'First Person', role: 'gauging and pulls' }),
      rowWith('people', { person: 'examiner', name: 'Second Person' }),
    ],
    instruments: [
      rowWith('instruments', {
        instrument: 'RIG-1',
        kind: 'rig',
        unit: 'kN',
        resolution: 0.02,
        range_minimum: 5,
        range_maximum: 100,
        class: 1,
      }),
      rowWith('instruments', {
        instrument: 'CAL-1',
        kind: 'calliper',
        unit: 'mm',
        resolution: 0.01,
        range_minimum: 0,
        range_maximum: 150,
      }),
    ],
    calibrations: [rowWith('calibrations', certificate)],
    samples: products.map(({ product }) =>
      rowWith('samples', {
        sample: `${product}-S1`,
        product,
        received_on: '2026-03-05',
        received_by: 'gauger',
        bought_from: 'Counter sale',
        length_m: 2,
        mass_kg: 2.7,
        condition: 'clean, dry, no damage seen',
      }),
    ),
    products,
    pieces,
    comparisons: products.length === 0 ? [] : [comparisonOf(products, pieces, shape)],
    agreement: null,
    answers: products.map((product) => `${product.product}: ${product.standing}.`),
    photographs: [],
    limitsOfTheFinding: ['Few pieces from one length of each product.'],
    doubts: ['CAL-1 has no certificate on record.'],
  };
}

function comparisonOf(
  products: readonly ProductFinding[],
  pieces: readonly PieceFinding[],
  shape: FixtureShape,
): CampaignFinding['comparisons'][number] {
  const groups = products.map(({ product }) => ({
    name: product,
    values: valuesOf(pieces.filter((piece) => piece.product === product)),
  }));
  return {
    nominalSize_mm: 8,
    products: products.map((one) => one.product),
    sentences: ['The means differ by less than their scatter.'],
    statistics: shape.isInferred === true ? compareGroups({ groups, seed: 1, draws: 500, unit: 'kN' }) : null,
    worth: valueForMoney([], { seed: 1 }),
  };
}
