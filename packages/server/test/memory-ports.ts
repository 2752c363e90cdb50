import {
  type BriefFinding,
  type CampaignFinding,
  type CampaignSummary,
  type LedgerPage,
  type LedgerState,
  type PullCurve,
  rowWith,
} from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import type { ServerPorts } from '../src/ports.ts';

export const summary: CampaignSummary = {
  campaign: 'QUAY-1',
  title: 'One chain',
  question: 'Is it as strong as its mark says?',
  client: null,
  openedOn: '2026-03-02',
  marking: 'invented test data',
  products: 1,
  pieces: 1,
  pulled: 0,
  standing: { conforms: 0, 'does not conform': 0, inconclusive: 0, 'not judged': 1 },
};

export const quay = rowWith('campaign', {
  campaign: 'QUAY-1',
  title: 'One chain',
  question: 'Is it as strong as its mark says?',
  opened_on: '2026-03-02',
  decision_rule: 'guarded acceptance',
  coverage_factor: 2,
  marking: 'invented test data',
});

export const finding: CampaignFinding = {
  campaign: quay,
  rule: 'guarded acceptance',
  ruleSentence: 'A value must clear its limit by U.',
  people: [],
  instruments: [],
  calibrations: [],
  samples: [],
  products: [],
  pieces: [],
  comparisons: [],
  agreement: null,
  answers: ['Nothing was pulled.'],
  photographs: [],
  limitsOfTheFinding: [],
  doubts: [],
};

export const brief: BriefFinding = {
  campaign: 'QUAY-1',
  question: 'Is it as strong as its mark says?',
  askedBy: null,
  laboratory: null,
  rule: 'guarded acceptance',
  ruleSentence: 'A value must clear its limit by U.',
  method: null,
  sampling: null,
  answers: ['Nothing was prepared.'],
  products: [],
  sizes: [],
  rigs: [],
  order: null,
  assumptions: ['Nothing is taken for granted.'],
};

export const curve: PullCurve = {
  pull: 'P-1',
  time_s: [0, 1],
  force_kN: [0, 2.5],
  table_mm: null,
  extension_mm: [0, 0.4],
};

export const ledger: LedgerPage = {
  entries: [
    {
      seq: 1,
      at: '2026-03-02T08:00:00Z',
      who: 'gauger',
      action: 'bring in',
      kind: 'campaign',
      record: 'QUAY-1',
      why: 'brought in',
      hash: 'ab'.repeat(32),
      changes: [{ cell: 'title', before: null, after: 'One chain' }],
    },
  ],
  found: 1,
  next: null,
};

export const ledgerState: LedgerState = {
  verified: true,
  entries: 1,
  head: 'b2'.repeat(32),
  disagreements: [],
};

export const reportBytes = new TextEncoder().encode('%PDF-1.7 test');

/** A record of one campaign held in memory; FAULTY has a fault in its rows, BROKEN breaks. */
export const memoryPorts: ServerPorts = {
  campaigns: async () => ({ campaigns: [summary], next: null }),
  finding: async (code) => {
    if (code === 'FAULTY') throw new InputError('size-unknown', 'products, row 1: no size 9 mm in EN 818-3.');
    if (code === 'BROKEN') throw new Error('secret detail of the machine');
    return code === 'QUAY-1' ? finding : null;
  },
  brief: async (code) => (code === 'QUAY-1' ? brief : null),
  curve: async (code, pull) => (code === 'QUAY-1' && pull === 'P-1' ? curve : null),
  package: async (code) => (code === 'QUAY-1' ? reportBytes : null),
  report: async (code) => (code === 'QUAY-1' ? reportBytes : null),
  ledger: async (code) => (code === 'QUAY-1' ? ledger : null),
  ledgerState: async (code) => (code === 'QUAY-1' ? ledgerState : null),
};
