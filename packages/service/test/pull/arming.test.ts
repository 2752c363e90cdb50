import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type CampaignAtRig, cautions } from '@provinghouse/contract';
import { isInputError } from '@provinghouse/core';
import { clearToArm } from '../../src/pull/arming.ts';
import { watchOptionsOf } from '../../src/pull/watch-options.ts';

const campaign: CampaignAtRig = {
  campaign: 'QUAY-1',
  title: 'One chain',
  marking: null,
  isPlanOpen: false,
  rangeMinimum_kN: 10,
  rangeMaximum_kN: 100,
  class: 1,
  certificate: { number: 'C-1', calibratedOn: '2026-01-12', dueOn: '2027-01-12', isInForce: true },
  tableSpeedLimits_mm_per_min: [10, 60],
  people: [{ person: 'wren', name: 'Wren' }],
  pieces: [
    {
      piece: 'ASH-8-1',
      nominalSize_mm: 8,
      links: 5,
      minimumForce_kN: 40.2,
      expectedForce_kN: 60.3,
      ruleLines: [],
      isPulled: false,
    },
    {
      piece: 'ASH-8-2',
      nominalSize_mm: 8,
      links: 5,
      minimumForce_kN: 40.2,
      expectedForce_kN: 60.3,
      ruleLines: [],
      isPulled: true,
    },
    {
      piece: 'FIR-26-1',
      nominalSize_mm: 26,
      links: 5,
      minimumForce_kN: 425,
      expectedForce_kN: 637.5,
      ruleLines: [],
      isPulled: false,
    },
    {
      piece: 'TIN-2-1',
      nominalSize_mm: 2,
      links: 5,
      minimumForce_kN: 2,
      expectedForce_kN: 3,
      ruleLines: [],
      isPulled: false,
    },
    {
      piece: 'OWN-8-1',
      nominalSize_mm: 8,
      links: 5,
      minimumForce_kN: null,
      expectedForce_kN: null,
      ruleLines: [],
      isPulled: false,
    },
  ],
};
const input = {
  campaign: 'QUAY-1',
  piece: 'ASH-8-1',
  confirmed: ' ash-8-1',
  operator: 'wren',
  cautions: [...cautions],
};
const ground = {
  rig: 'RIG-1',
  isPractice: false,
  fixtureLimit_kN: null,
  agreedDrop: null,
  campaigns: [campaign],
  piecesTaken: [],
};
const change = (rows: Partial<CampaignAtRig>) => ({ campaigns: [{ ...campaign, ...rows }] });
const of = (piece: string) => ({ piece, confirmed: piece });

test('a piece that is known, confirmed, within range and certificate, with every caution said, may be armed', () => {
  const { piece } = clearToArm(input, ground);
  assert.equal(piece.piece, 'ASH-8-1');
});

test('the limit of the fixture and the agreed drop of a rig go to the watch; none stated, none watched', () => {
  const bare = watchOptionsOf(clearToArm(input, ground));
  assert.deepEqual([bare.fixtureLimit_kN, bare.agreedDrop_pct], [null, null]);
  const stated = watchOptionsOf(clearToArm(input, { ...ground, fixtureLimit_kN: 60.3, agreedDrop: 0.2 }));
  assert.deepEqual([stated.fixtureLimit_kN, stated.agreedDrop_pct], [60.3, 20]);
});

const refusals = [
  ['a rig the campaign does not know', 'pull/rig-unknown', { campaign: 'QUAY-2' }, {}],
  ['a practice rig in a campaign in earnest', 'pull/practice-in-earnest', {}, { isPractice: true }],
  ['a piece that is not there', 'pull/piece-unknown', of('ASH-8-9'), {}],
  ['a tag that reads otherwise', 'pull/piece-not-confirmed', { confirmed: 'ASH-8-3' }, {}],
  ['a tag that was not read', 'pull/piece-not-confirmed', { confirmed: '' }, {}],
  ['a piece that was pulled', 'pull/piece-pulled', of('ASH-8-2'), {}],
  ['a piece that another rig has', 'pull/piece-pulled', {}, { piecesTaken: ['QUAY-1/ASH-8-1'] }],
  ['a campaign whose plan is not frozen yet', 'entry/plan-not-frozen', {}, change({ isPlanOpen: true })],
  ['no certificate', 'pull/certificate-not-in-force', {}, change({ certificate: null })],
  [
    'a certificate out of date',
    'pull/certificate-not-in-force',
    {},
    change({ certificate: { number: 'C-1', calibratedOn: '2025-01-12', dueOn: '2026-01-12', isInForce: false } }),
  ],
  ['a force nobody knows', 'pull/force-unknown', of('OWN-8-1'), {}],
  ['a range nobody knows', 'pull/range-unknown', {}, change({ rangeMaximum_kN: null })],
  ['a piece too strong for the rig', 'pull/range-unfit', of('FIR-26-1'), {}],
  ['a piece too weak for the rig', 'pull/range-unfit', of('TIN-2-1'), {}],
  ['a piece that may break the fixture', 'pull/fixture-limit', {}, { fixtureLimit_kN: 60 }],
  ['an operator nobody knows', 'pull/operator-unknown', { operator: 'heron' }, {}],
  ...cautions.map(
    (caution) =>
      [
        `the caution "${caution}" left open`,
        'pull/caution-open',
        { cautions: cautions.filter((one) => one !== caution) },
        {},
      ] as const,
  ),
] as const;

for (const [what, code, said, stands] of refusals) {
  test(`${what} keeps the rig unarmed`, () => {
    assert.throws(
      () => clearToArm({ ...input, ...said }, { ...ground, ...stands }),
      (error) => isInputError(error) && error.code === code,
    );
  });
}
