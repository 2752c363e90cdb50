import { optional, required } from './field.ts';
import { table } from './table.ts';

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
  sample: optional('string', { description: 'sample shown', example: '', references: 'samples' }),
  caption: optional('string', { description: 'what is to be seen', example: 'the parted link, from the fixed end' }),
  by: optional('string', { description: 'who took it', example: 'examiner', references: 'people' }),
  taken_at: optional('datetime', { description: 'when', example: '' }),
});
