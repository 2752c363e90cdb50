import { optional, required } from './field.ts';
import { table } from './table.ts';

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

export const custody = table('custody', 'Where a sample went: one row for each move, from its receipt on.', {
  sample: required('string', {
    key: true,
    description: 'which sample',
    example: 'ASH-8-S1',
    example2: 'BIRCH-8-S1',
    references: 'samples',
  }),
  move: required('integer', {
    key: true,
    description: '1 for the receipt, 2, 3 ... in turn',
    example: '1',
    minimum: 1,
  }),
  moved_at: required('datetime', { description: 'when', example: '2026-03-05T14:00:00Z' }),
  place: required('string', { description: 'where it was put', example: 'sample shelf 2' }),
  by: optional('string', { description: 'who moved it', example: 'gauger', references: 'people' }),
  due_back_on: optional('date', {
    description: 'day by which it must come back, where it left the laboratory or was lent',
    example: '',
  }),
  note: optional('string', { description: 'anything seen', example: '' }),
});
