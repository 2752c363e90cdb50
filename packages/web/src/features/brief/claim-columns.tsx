import type { Row, RowFault, RowHeld } from '@provinghouse/contract';
import { gradeDefinitionId, isInputError, type OwnStandard, rulebookIndex, sizesFor } from '@provinghouse/core';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import type { AskedColumn, OwnControl } from '../../components/row-form.tsx';
import { lookUp } from '../../lib/specification-of.ts';
import { text } from '../../lib/text.ts';
import { SpecificationField } from './specification-field.tsx';

const words = text.brief.desk.claims;
const { label, hint } = words;

/** What is asked of a product; its code only while it is new. */
export function claimColumns(own: readonly OwnStandard[], isNew: boolean): readonly AskedColumn[] {
  const index = rulebookIndex(own);
  return [
    ...(isNew ? [{ column: 'product', label: label.product, hint: hint.product }] : []),
    { column: 'supplier', label: label.supplier },
    { column: 'description', label: label.description, hint: hint.description, isWide: true },
    {
      column: 'specification',
      label: label.specification,
      isWide: true,
      control: (given) => <SpecificationField given={given} index={index} />,
    },
    {
      column: 'nominal_size_mm',
      label: label.nominal_size_mm,
      control: (given) => <SizeField given={given} own={own} />,
    },
    { column: 'grade', label: label.grade, control: (given) => <GradeField given={given} own={own} /> },
    {
      column: 'claimed_breaking_force_kN',
      label: label.claimed_breaking_force_kN,
      hint: hint.claimed,
      unit: 'kN',
    },
    { column: 'price_per_metre', label: label.price_per_metre },
    {
      column: 'currency',
      label: label.currency,
      hint: hint.currency,
      list: ['EUR', 'GBP', 'USD', 'NOK', 'SEK', 'DKK', 'CHF'],
    },
  ];
}

interface FieldProps {
  readonly given: OwnControl;
  readonly own: readonly OwnStandard[];
}

/** The grades of the specification chosen; the grade definition takes any number. */
function GradeField({ given, own }: FieldProps) {
  const { typed, onOther: _other, ...shell } = given;
  const entry = rulebookIndex(own).find(({ id }) => id === typed.specification);
  if (!entry) return <TextField {...shell} />;
  if (entry.id === gradeDefinitionId) return <TextField {...shell} hint={hint.gradeAny} list={entry.grades} />;
  if (entry.grades.length === 0) return <ChoiceField {...shell} hint={hint.gradeNone} choices={[]} empty={text.none} />;
  const choices = entry.grades.map((grade) => ({ value: grade, label: grade }));
  const isKnown = shell.value === '' || entry.grades.includes(shell.value);
  return (
    <ChoiceField
      {...shell}
      choices={isKnown ? choices : [...choices, { value: shell.value, label: shell.value }]}
      empty={text.entry.form.choose}
    />
  );
}

/** The size in mm, with what the specification chosen lists. */
function SizeField({ given, own }: FieldProps) {
  const { typed, onOther: _other, ...shell } = given;
  const told = sizesTold(typed.specification ?? '', typed.grade ?? '', own);
  return (
    <TextField
      {...shell}
      isNumber
      unit="mm"
      {...(told.hint === null ? {} : { hint: told.hint })}
      {...(told.sizes.length === 0 ? {} : { list: told.sizes })}
    />
  );
}

function sizesTold(standard: string, grade: string, own: readonly OwnStandard[]) {
  const entry = rulebookIndex(own).find(({ id }) => id === standard);
  if (!entry) return { hint: null, sizes: [] };
  const sizes = listed(standard, grade, own);
  const range = entry.anySizeWithin_mm;
  const first = sizes.length > 0 ? [hint.sizes(shortened(sizes).join(', '))] : [];
  const second = range === null ? [] : [hint.anySize(range[0], range[1])];
  return { hint: [...first, ...second].join(' ') || null, sizes };
}

function listed(standard: string, grade: string, own: readonly OwnStandard[]): string[] {
  try {
    const named = grade === '' ? {} : { grade };
    return sizesFor({ standard, ...named, own }).map(({ size_mm }) => String(size_mm));
  } catch (error) {
    // A grade may be half typed, or not be chosen yet.
    if (isInputError(error)) return [];
    throw error;
  }
}

/** A dozen sizes can be read; of more, the ends. */
function shortened(sizes: readonly string[]): readonly string[] {
  return sizes.length <= 12 ? sizes : [...sizes.slice(0, 8), '…', ...sizes.slice(-2)];
}

interface ClaimCheck {
  readonly own: readonly OwnStandard[];
  /** Products that stand there; without the one that is corrected. */
  readonly others: readonly RowHeld<'products'>[];
  /** As it stood before a correction. */
  readonly before?: Row<'products'>;
}

/** A claim that the Rulebook does not hold, or a code that is taken: each at its field. */
export function claimFault(row: Row<'products'>, { own, others, before }: ClaimCheck): RowFault | null {
  const isTaken = others.some(({ id }) => id.toLowerCase() === row.product.toLowerCase());
  if (isTaken) return { column: 'product', fault: words.taken(row.product) };
  // The campaign may hold an own specification that this browser does not.
  const isSameRule =
    before?.specification === row.specification &&
    before.grade === row.grade &&
    before.nominal_size_mm === row.nominal_size_mm;
  if (isSameRule) return null;
  const claim = { specification: row.specification, grade: row.grade ?? '', size_mm: row.nominal_size_mm };
  const found = lookUp(claim, own);
  return found !== null && 'fault' in found ? { column: found.column, fault: found.fault } : null;
}
