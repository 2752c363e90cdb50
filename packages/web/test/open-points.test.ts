import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { CampaignFinding, LedgerState } from '@provinghouse/contract';
import { openPoints } from '../src/features/issue/open-points.ts';

/** Only what the page looks at. */
const piece = (name: string, cells: object) => ({ piece: name, gauging: {}, pull: {}, breaks: [], ...cells });
const limit = (flags: readonly string[]) => ({ provenance: { flags } });
const product = (name: string, flags: readonly string[]) => ({
  product: name,
  standing: 'conforms',
  specification: { limits: [limit(flags)] },
});
const findingOf = (cells: object) =>
  ({
    campaign: { campaign: 'QUAY-1', plan_frozen_at: '2026-03-09T10:00:00Z', blinding: 'open', unblinded_at: null },
    pieces: [],
    products: [],
    doubts: [],
    ...cells,
  }) as unknown as CampaignFinding;
const whole: LedgerState = { verified: true, entries: 1, head: 'ab', disagreements: [] };
const openOf = (finding: CampaignFinding, ledger: LedgerState | null = whole) =>
  openPoints(finding, ledger).filter(({ standing }) => standing !== 'conforms');

test('a campaign with everything done, read twice, on a whole ledger has nothing open', () => {
  const breaks = [{ examiner: 'wren' }, { examiner: 'teal' }];
  const finding = findingOf({ pieces: [piece('A-1', { breaks })], products: [product('ASH-8', [])] });
  assert.deepEqual(openOf(finding), []);
});

test('each piece stands under what is missing of it, and a limit from memory under its product', () => {
  const pieces = [
    piece('A-1', { gauging: null, pull: null }),
    piece('A-2', {}),
    piece('A-3', { breaks: [{ examiner: 'wren' }, { examiner: 'wren' }] }),
  ];
  const finding = findingOf({ pieces, products: [product('ASH-8', ['memory'])] });
  assert.deepEqual(
    openOf(finding).map(({ name, open }) => [name, open]),
    [
      ['gauged', ['A-1']],
      ['pulled', ['A-1']],
      ['read', ['A-2']],
      ['twice', ['A-3']],
      ['memory', ['ASH-8']],
    ],
  );
});

test('a campaign that is still blind, or whose ledger is broken, is not ready yet', () => {
  const blind = { campaign: 'QUAY-1', plan_frozen_at: '2026-03-09T10:00:00Z', blinding: 'blind', unblinded_at: null };
  const broken = { ...whole, verified: false, disagreements: ['pieces A-1: the row is not what entry 3 says'] };
  assert.deepEqual(
    openOf(findingOf({ campaign: blind }), broken).map(({ name, standing }) => [name, standing]),
    [
      ['blind', 'does not conform'],
      ['ledger', 'does not conform'],
    ],
  );
  assert.equal(openOf(findingOf({}), null)[0]?.standing, 'not judged');
});
