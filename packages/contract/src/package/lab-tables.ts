import { optional, required } from './field.ts';
import { table } from './table.ts';

export const campaign = table('campaign', 'The question and how it is to be decided. Exactly one row.', {
  campaign: required('string', {
    key: true,
    description: 'code of the campaign, short and unique in the record',
    example: 'MY-CAMPAIGN',
    pattern: {
      expression: '[A-Za-z0-9][A-Za-z0-9._-]{0,63}',
      words: 'one to 64 letters A to Z, digits, points, dashes or underlines, beginning with a letter or digit',
    },
  }),
  title: required('string', { description: 'title of the finding', example: '8 mm chain for mooring bridles' }),
  question: required('string', {
    description: 'the question asked, in the words of who asked it',
    example: 'Is this chain as strong as its mark says?',
  }),
  client: optional('string', { description: 'who asked', example: 'The harbour office' }),
  laboratory: optional('string', { description: 'who tests, with place', example: 'Test room, shed 2' }),
  opened_on: required('date', { description: 'day the campaign was opened', example: '2026-03-02' }),
  decision_rule: required('string', {
    description:
      'how a value meets its limit: simple acceptance (the value itself), or guarded acceptance (the value less its expanded uncertainty U, guard band w = U)',
    example: 'guarded acceptance',
    choices: ['simple acceptance', 'guarded acceptance'],
  }),
  coverage_factor: required('number', {
    description: 'factor k of the expanded uncertainty U = k u',
    example: '2',
    exclusiveMinimum: 0,
    maximum: 4,
  }),
  method: optional('string', {
    description: 'how the pulls were made: preload, speed, grips',
    example: 'Straight pull in shackles, table speed set by hand',
  }),
  sampling: optional('string', {
    description: 'how the samples were chosen and bought',
    example: 'Bought over the counter, one length each',
  }),
  table_speed_min_mm_per_min: optional('number', {
    description: 'least table speed the method allows in the loaded part, mm/min',
    example: '10',
    minimum: 0,
  }),
  table_speed_max_mm_per_min: optional('number', {
    description: 'greatest table speed the method allows in the loaded part, mm/min',
    example: '60',
    minimum: 0,
  }),
  marking: optional('string', {
    description: 'a marking every page must carry, such as "invented demonstration data"',
    example: 'invented example: replace every row',
  }),
  pieces_per_product: optional('integer', {
    description: 'how many pieces of each product are to be pulled, as planned',
    example: '5',
    minimum: 1,
  }),
  order_seed: optional('integer', {
    description: 'seed from which the order of the pulls is drawn, so that anybody draws the same order',
    example: '7',
    minimum: 0,
    maximum: 4294967295,
  }),
  blinding: optional('string', {
    description:
      'open, or blind: from the freezing of the plan to the unblinding no screen and no page names product or supplier',
    example: 'open',
    choices: ['open', 'blind'],
  }),
  plan_frozen_at: optional('datetime', {
    description: 'when the plan was frozen, before the first pull; a later change is an amendment with its reason',
    example: '',
  }),
  unblinded_at: optional('datetime', { description: 'when a blind campaign was unblinded', example: '' }),
});

export const people = table('people', 'Everybody who bought, gauged, pulled, examined or signed.', {
  person: required('string', {
    key: true,
    description: 'short name used in the other tables',
    example: 'gauger',
    example2: 'examiner',
  }),
  name: required('string', { description: 'name as printed', example: 'First person', example2: 'Second person' }),
  role: optional('string', {
    description: 'what they do in this campaign',
    example: 'gauging and pulls',
    example2: 'second reader',
  }),
});

export const instruments = table('instruments', 'Rigs, callipers, gauges: what read the numbers.', {
  instrument: required('string', {
    key: true,
    description: 'short name used in the other tables',
    example: 'RIG-1',
    example2: 'CAL-1',
  }),
  kind: required('string', {
    description: 'what it is',
    example: 'rig',
    example2: 'calliper',
    choices: ['rig', 'calliper', 'micrometer', 'tape', 'balance', 'coating gauge', 'other'],
  }),
  description: optional('string', {
    description: 'make is not needed; type and range help',
    example: '100 kN hydraulic rig',
    example2: '150 mm digital calliper',
  }),
  unit: required('string', {
    description: 'unit of resolution, range and expanded uncertainty',
    example: 'kN',
    example2: 'mm',
    choices: ['kN', 'mm', 'um', 'kg'],
  }),
  resolution: required('number', {
    description: 'smallest step it shows, in its unit',
    example: '0.02',
    example2: '0.01',
    exclusiveMinimum: 0,
  }),
  range_minimum: optional('number', {
    description: 'least verified value, in its unit',
    example: '10',
    example2: '0',
    minimum: 0,
  }),
  range_maximum: optional('number', {
    description: 'greatest verified value, in its unit; for a rig also where its reading clips',
    example: '100',
    example2: '150',
    exclusiveMinimum: 0,
  }),
  class: optional('number', {
    description: 'for a rig: class of ISO 7500-1 on the certificate (0.5, 1, 2, 3): error of indication in per cent',
    example: '1',
    example2: '',
    exclusiveMinimum: 0,
  }),
  extension_class: optional('number', {
    description:
      'for a rig: class of ISO 9513 of its extension or table measurement (0.5, 1, 2): error of indication in per cent',
    example: '1',
    example2: '',
    exclusiveMinimum: 0,
  }),
  compliance_mm_per_kN: optional('number', {
    description: 'for a rig: stretch of frame and grips per kilonewton, where it was measured',
    example: '',
    minimum: 0,
  }),
});

export const calibrations = table('calibrations', 'Certificates of the instruments.', {
  calibration: required('string', {
    key: true,
    description: 'number of the certificate',
    example: 'C-1001',
    example2: 'C-1002',
  }),
  instrument: required('string', {
    description: 'which instrument',
    example: 'RIG-1',
    example2: 'CAL-1',
    references: 'instruments',
  }),
  calibrated_on: required('date', { description: 'day of calibration', example: '2026-01-12' }),
  due_on: required('date', { description: 'day it falls due', example: '2027-01-12' }),
  expanded_uncertainty: optional('number', {
    description:
      "expanded uncertainty on the certificate, in the instrument's unit; for a rig with a class leave it empty",
    example: '',
    example2: '0.02',
    exclusiveMinimum: 0,
  }),
  coverage_factor: optional('number', {
    description: 'factor k it was stated with',
    example: '',
    example2: '2',
    exclusiveMinimum: 0,
  }),
});

export const checks = table('checks', 'Check readings: an instrument read against something of known size or force.', {
  instrument: required('string', {
    key: true,
    description: 'which instrument',
    example: 'CAL-1',
    references: 'instruments',
  }),
  checked_at: required('datetime', {
    key: true,
    description: 'when',
    example: '2026-02-02T08:00:00Z',
    example2: '2026-02-09T08:05:00Z',
  }),
  reference: optional('string', { description: 'what it was read against', example: 'gauge block 20 mm' }),
  reference_value: required('number', { description: "its known value, in the instrument's unit", example: '20' }),
  reading: required('number', {
    description: "what the instrument showed, in the instrument's unit",
    example: '20.01',
    example2: '19.99',
  }),
  by: optional('string', { description: 'who read it', example: 'gauger', references: 'people' }),
  note: optional('string', { description: 'anything seen', example: '' }),
});
