import { type Fields, optional, type RowOf, required } from './field.ts';

export interface Table<F extends Fields = Fields> {
  readonly name: string;
  readonly about: string;
  readonly fields: F;
}

function table<const F extends Fields>(name: string, about: string, fields: F): Table<F> {
  return { name, about, fields };
}

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

export const products = table('products', 'What each supplier sells under one claim.', {
  product: required('string', { key: true, description: 'code of the product', example: 'ASH-8', example2: 'BIRCH-8' }),
  supplier: required('string', { description: 'who sells it', example: 'Ash', example2: 'Birch' }),
  description: optional('string', { description: 'as sold', example: '8 mm short-link chain, galvanised' }),
  nominal_size_mm: required('number', { description: 'nominal size d, mm', example: '8', exclusiveMinimum: 0 }),
  specification: required('string', {
    description:
      'rulebook entry it is judged by (`provinghouse reckon --rules` lists them), or the id of an own specification in specifications/',
    example: 'en-818-3',
  }),
  grade: optional('string', {
    description: 'grade claimed, as the specification names it; may be left out where it has only one',
    example: '4',
  }),
  claimed_breaking_force_kN: optional('number', {
    description: 'breaking force on the mark or label, kN, where one is claimed beside the specification',
    example: '',
    exclusiveMinimum: 0,
  }),
  price_per_metre: optional('number', {
    description: 'price of one metre',
    example: '6.40',
    example2: '5.10',
    minimum: 0,
  }),
  currency: optional('string', { description: 'currency of the price, ISO 4217', example: 'EUR' }),
});

export const samples = table('samples', 'A length of a product as received.', {
  sample: required('string', {
    key: true,
    description: 'code of the sample',
    example: 'ASH-8-S1',
    example2: 'BIRCH-8-S1',
  }),
  product: required('string', {
    description: 'which product',
    example: 'ASH-8',
    example2: 'BIRCH-8',
    references: 'products',
  }),
  received_on: required('date', { description: 'day received', example: '2026-03-05' }),
  received_by: optional('string', { description: 'who received it', example: 'gauger', references: 'people' }),
  bought_from: optional('string', { description: 'where and how it was bought', example: 'Counter sale' }),
  batch_mark: optional('string', { description: 'marks found on chain or tag', example: 'none' }),
  length_m: optional('number', { description: 'length received, m', example: '2.0', exclusiveMinimum: 0 }),
  mass_kg: optional('number', { description: 'mass of that length, kg', example: '2.7', exclusiveMinimum: 0 }),
  condition: optional('string', { description: 'condition on receipt', example: 'clean, dry, no damage seen' }),
});

export const pieces = table('pieces', 'The links cut from a sample for one pull.', {
  piece: required('string', {
    key: true,
    description: 'code of the piece, on its tag',
    example: 'ASH-8-1',
    example2: 'BIRCH-8-1',
  }),
  sample: required('string', {
    description: 'which sample it was cut from',
    example: 'ASH-8-S1',
    example2: 'BIRCH-8-S1',
    references: 'samples',
  }),
  links: required('integer', {
    description: 'free links between the grips (gripped links are not counted)',
    example: '5',
    minimum: 1,
  }),
  gauge_length_mm: optional('number', {
    description:
      'sum of the inside lengths of the free links at the preload, mm; left empty it is taken from the gauged pitch, else from the nominal pitch, and said so',
    example: '',
    exclusiveMinimum: 0,
  }),
  gauged_over: optional('string', {
    description:
      'what the callipers touched: bare steel, or the zinc (then twice the mean zinc thickness of the piece comes off the bar)',
    example: 'zinc',
    choices: ['bare steel', 'zinc'],
  }),
  note: optional('string', { description: 'anything seen', example: '' }),
});

export const gauging = table('gauging', 'One row for each reading of one instrument.', {
  piece: required('string', { key: true, description: 'which piece', example: 'ASH-8-1', references: 'pieces' }),
  link: optional('integer', {
    key: true,
    description: 'link, counted from the fixed end; empty for the piece as a whole',
    example: '1',
    minimum: 1,
  }),
  position: required('string', {
    key: true,
    description: 'where on the link',
    example: 'leg',
    example2: 'link',
    choices: ['leg', 'crown', 'weld', 'link', 'piece'],
  }),
  quantity: required('string', {
    key: true,
    description: 'what was read',
    example: 'diameter',
    example2: 'pitch',
    choices: ['diameter', 'weldDiameter', 'pitch', 'innerWidth', 'outerWidth', 'outerLength', 'lengthOverLinks'],
  }),
  direction: required('integer', {
    key: true,
    description: '1, and 2 for the reading at right angles, and so on',
    example: '1',
    minimum: 1,
  }),
  repeat: required('integer', {
    key: true,
    description: '1 for the first reading, 2 for the same place read again',
    example: '1',
    minimum: 1,
  }),
  value_mm: required('number', {
    description: 'the reading, mm',
    example: '8.02',
    example2: '24.10',
    exclusiveMinimum: 0,
  }),
  over_links: optional('integer', { description: 'for lengthOverLinks: over how many links', example: '', minimum: 1 }),
  instrument: required('string', { description: 'read with', example: 'CAL-1', references: 'instruments' }),
  by: required('string', { description: 'read by', example: 'gauger', references: 'people' }),
  read_at: optional('datetime', { description: 'when', example: '2026-03-06T09:10:00Z' }),
});

export const pulls = table('pulls', 'One tensile test of one piece: a trace, or a maximum keyed from the panel.', {
  pull: required('string', { key: true, description: 'code of the pull', example: 'P-001', example2: 'P-002' }),
  piece: required('string', {
    description: 'which piece',
    example: 'ASH-8-1',
    example2: 'BIRCH-8-1',
    references: 'pieces',
  }),
  rig: required('string', { description: 'on which rig', example: 'RIG-1', references: 'instruments' }),
  operator: optional('string', { description: 'who pulled', example: 'gauger', references: 'people' }),
  pulled_at: optional('datetime', { description: 'when', example: '2026-03-09T10:00:00Z' }),
  trace: optional('string', {
    description: 'recording, a path in this package below traces/',
    example: 'traces/P-001.csv',
    example2: '',
  }),
  time_column: optional('string', {
    description:
      'column of the trace that is time, where the header leaves it open; a unit may follow in brackets: t[s]',
    example: '',
  }),
  force_column: optional('string', { description: 'column that is force, likewise', example: '' }),
  table_column: optional('string', { description: 'column that is table (crosshead) travel, likewise', example: '' }),
  extension_column: optional('string', { description: 'column that is extension of the links, likewise', example: '' }),
  panel_maximum_kN: optional('number', {
    description: 'maximum read off the panel by eye, kN, where there is no trace',
    example: '',
    example2: '36.4',
    exclusiveMinimum: 0,
  }),
  panel_uncertainty_kN: optional('number', {
    description: 'standard uncertainty of that reading by eye, kN',
    example: '',
    example2: '0.2',
    exclusiveMinimum: 0,
  }),
  valid: required('boolean', { description: 'false when the pull must not be used', example: 'true' }),
  invalid_reason: optional('string', { description: 'why not; needed when valid is false', example: '' }),
  note: optional('string', { description: 'anything seen or heard', example: '' }),
});

export const breaks = table('breaks', 'Where a piece parted and how. A row for each examiner and each broken link.', {
  pull: required('string', {
    key: true,
    description: 'which pull',
    example: 'P-001',
    example2: 'P-002',
    references: 'pulls',
  }),
  link: required('integer', {
    key: true,
    description: 'link that parted, from the fixed end; 0 for a gripped link',
    example: '3',
    minimum: 0,
  }),
  examiner: required('string', {
    key: true,
    description: 'who read the break',
    example: 'examiner',
    references: 'people',
  }),
  position: required('string', {
    description: 'where',
    example: 'crown',
    example2: 'weld',
    choices: ['crown', 'shank', 'weld', 'beside weld', 'in grip'],
  }),
  mode: required('string', {
    description: 'how',
    example: 'ductile cup-and-cone',
    example2: 'weld not fused',
    choices: ['ductile cup-and-cone', 'shear', 'fibrous', 'brittle', 'fatigue', 'weld not fused', 'unclear'],
  }),
  note: optional('string', { description: 'what was seen', example: '' }),
});

export const zinc = table('zinc', 'What was read of the zinc: thickness before the pull, behaviour after it.', {
  piece: required('string', { key: true, description: 'which piece', example: 'ASH-8-1', references: 'pieces' }),
  link: required('integer', { key: true, description: 'which link', example: '2', example2: '3', minimum: 1 }),
  reading: required('integer', { key: true, description: '1, 2, 3 ... on that link', example: '1', minimum: 1 }),
  thickness_um: optional('number', { description: 'zinc thickness, um', example: '84', example2: '91', minimum: 0 }),
  adherence: optional('integer', {
    description:
      'after deformation: 0 no change, 1 fine crazing, 2 cracked but adherent, 3 flakes under 10 % of the strained zone, 4 flakes 10 to 50 %, 5 over 50 % or sheets',
    example: '',
    minimum: 0,
    maximum: 5,
  }),
  flaked_share_pct: optional('number', {
    description: 'share of the strained zone that is bare, %',
    example: '',
    minimum: 0,
    maximum: 100,
  }),
  instrument: optional('string', { description: 'read with', example: '', references: 'instruments' }),
  by: optional('string', { description: 'read by', example: 'gauger', references: 'people' }),
  note: optional('string', { description: 'what was seen', example: '' }),
});

export const photographs = table('photographs', 'Pictures below photographs/.', {
  file: required('string', {
    key: true,
    description: 'path in this package below photographs/',
    example: 'photographs/ASH-8-1.png',
    example2: 'photographs/BIRCH-8-1.png',
  }),
  piece: optional('string', {
    description: 'piece shown',
    example: 'ASH-8-1',
    example2: 'BIRCH-8-1',
    references: 'pieces',
  }),
  caption: optional('string', { description: 'what is to be seen', example: 'the parted link, from the fixed end' }),
  by: optional('string', { description: 'who took it', example: 'examiner', references: 'people' }),
  taken_at: optional('datetime', { description: 'when', example: '' }),
});

/** Every table of the data package, in the order in which rows may refer back. */
export const tables = {
  campaign,
  people,
  instruments,
  calibrations,
  products,
  samples,
  pieces,
  gauging,
  pulls,
  breaks,
  zinc,
  photographs,
} as const;

export type TableName = keyof typeof tables;
export type Row<T extends TableName> = RowOf<(typeof tables)[T]['fields']>;

/** All rows of one campaign, as brought in. */
export type CampaignRows = { readonly [T in TableName]: readonly Row<T>[] };
