import type { AskedColumn } from '../../components/row-form.tsx';
import { text } from '../../lib/text.ts';
import type { Bench } from './use-bench.ts';

const { label, hint } = text.samples;

/** What is asked of a sample; its code only while it is new. */
export function sampleColumns(
  { products, people }: Pick<Bench, 'products' | 'people'>,
  isNew: boolean,
): readonly AskedColumn[] {
  return [
    {
      column: 'product',
      label: label.product,
      choices: products.map(({ product, supplier }) => ({ value: product, label: `${supplier}: ${product}` })),
    },
    ...(isNew ? [{ column: 'sample', label: label.sample, hint: hint.sample }] : []),
    { column: 'received_on', label: label.received_on, isOftenToday: true },
    ...(isNew
      ? []
      : [
          {
            column: 'received_by',
            label: label.received_by,
            choices: people.map(({ person }) => ({ value: person, label: person })),
          },
        ]),
    { column: 'length_m', label: label.length_m, hint: hint.length_m, unit: 'm' },
    { column: 'mass_kg', label: label.mass_kg, unit: 'kg' },
    { column: 'bought_from', label: label.bought_from },
    { column: 'batch_mark', label: label.batch_mark, hint: hint.batch_mark },
    { column: 'condition', label: label.condition, rows: 2, isWide: true },
  ];
}
