import { type CampaignRows, rowWith } from '@provinghouse/contract';
import { bringInCampaign } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { heldCampaigns } from '../list-campaigns.ts';

/** Code of the campaign that practice pulls go into, and of the rig it is pulled on. */
export const practiceCampaign = 'PRACTICE';
export const practiceRigCode = 'PRACTICE-RIG';

/** Pieces to practise on. */
const pieceCount = 40;

/** Brings the practice campaign in where the record does not hold it; true when it was brought in now. Everything in it is invented and says so. */
export async function bringInPractice(effects: Effects): Promise<boolean> {
  if ((await heldCampaigns(effects)).includes(practiceCampaign)) return false;
  await bringInCampaign(effects.store, {
    rows: practiceRows(effects.now()),
    files: new Map(),
    who: effects.who,
    why: 'the practice campaign, invented',
    at: effects.now().toISOString(),
  });
  return true;
}

function day(now: Date, later_days = 0): string {
  return new Date(now.getTime() + later_days * 86_400_000).toISOString().slice(0, 10);
}

function practiceRows(now: Date): CampaignRows {
  const none = { checks: [], custody: [], gauging: [], pulls: [], breaks: [], zinc: [], photographs: [] };
  return {
    ...none,
    campaign: [
      rowWith('campaign', {
        campaign: practiceCampaign,
        title: 'Practice at the rig',
        question: 'Does whoever pulls know the rig, the keys and the cautions?',
        opened_on: day(now),
        decision_rule: 'guarded acceptance',
        coverage_factor: 2,
        method: 'A simulated chain of five free links of 8 mm, pulled by a simulated hydraulic rig.',
        table_speed_min_mm_per_min: 10,
        table_speed_max_mm_per_min: 60,
        marking: 'practice: every figure is simulated',
        plan_frozen_at: now.toISOString(),
      }),
    ],
    people: [rowWith('people', { person: 'learner', name: 'Learner (invented)', role: 'practice pulls' })],
    instruments: [
      rowWith('instruments', {
        instrument: practiceRigCode,
        kind: 'rig',
        description: 'practice rig, simulated, 100 kN',
        unit: 'kN',
        resolution: 0.01,
        range_minimum: 5,
        range_maximum: 100,
        class: 1,
        compliance_mm_per_kN: 0.011,
      }),
    ],
    calibrations: [
      rowWith('calibrations', {
        calibration: 'PRACTICE-CERTIFICATE',
        instrument: practiceRigCode,
        calibrated_on: day(now, -1),
        due_on: day(now, 3650),
      }),
    ],
    products: [
      rowWith('products', {
        product: 'PRACTICE-8',
        supplier: 'Nobody (invented)',
        description: 'simulated 8 mm chain',
        nominal_size_mm: 8,
        specification: 'en-818-3',
        grade: '4',
      }),
    ],
    samples: [rowWith('samples', { sample: 'PRACTICE-8-S1', product: 'PRACTICE-8', received_on: day(now) })],
    pieces: Array.from({ length: pieceCount }, (_, i) =>
      rowWith('pieces', { piece: `PRACTICE-8-${i + 1}`, sample: 'PRACTICE-8-S1', links: 5, gauge_length_mm: 120 }),
    ),
  };
}
