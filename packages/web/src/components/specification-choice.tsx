import { type OwnStandard, type RulebookEntry, readNumber, rulebookIndex, sizesFor } from '@provinghouse/core';
import { useMemo, useState } from 'react';
import { useOwnStandards } from '../lib/own-standards.ts';
import type { SpecificationKey } from '../lib/specification-key.ts';
import { text } from '../lib/text.ts';
import { ChoiceBlank, TextBlank } from './blank.tsx';

interface SpecificationChoiceProps {
  readonly chosen: SpecificationKey | null;
  /** Null where none may be chosen, and is. */
  readonly onChoose: (key: SpecificationKey | null) => void;
}

type Size = Pick<SpecificationKey, 'size_mm' | 'tradeSize'>;

const words = text.choice;

/** Standard, grade and size as three fields. A size is kept when the standard changes, where the next one has it too. */
export function SpecificationChoice({ chosen, onChoose }: SpecificationChoiceProps) {
  const own = useOwnStandards();
  const index = useMemo(() => rulebookIndex(own), [own]);
  const entry = chosen === null ? undefined : index.find(({ id }) => id === chosen.standard);
  const choose = (next: RulebookEntry, grade: string | null) =>
    onChoose({ standard: next.id, grade, ...sizeKept(next, { grade, from: chosen, own }) });
  return (
    <>
      <ChoiceBlank
        label={words.standard}
        value={entry?.id ?? ''}
        options={[['', words.none], ...index.map(({ id, standard, title }) => [id, `${standard}: ${title}`] as const)]}
        onChoose={(standard) => {
          const next = index.find(({ id }) => id === standard);
          if (next === undefined) onChoose(null);
          else choose(next, next.grades[0] ?? null);
        }}
      />
      {entry === undefined || chosen === null ? null : (
        <>
          {entry.grades.length === 0 ? null : (
            <ChoiceBlank
              label={words.grade}
              value={chosen.grade ?? ''}
              options={withChosen(entry.grades, chosen.grade).map((grade) => [grade, grade])}
              onChoose={(grade) => choose(entry, grade)}
            />
          )}
          <SizeBlank entry={entry} chosen={chosen} own={own} onSize={(size) => onChoose({ ...chosen, ...size })} />
        </>
      )}
    </>
  );
}

/** An address may hold a grade that only the definition knows. */
function withChosen(grades: readonly string[], chosen: string | null): readonly string[] {
  return chosen === null || grades.includes(chosen) ? grades : [...grades, chosen];
}

interface SizeKeeping {
  readonly grade: string | null;
  readonly from: SpecificationKey | null;
  readonly own: readonly OwnStandard[];
}

/** The size there was, else the listed one nearest to 8 mm, the smallest that is commonly moored with. */
function sizeKept(entry: RulebookEntry, { grade, from, own }: SizeKeeping): Size {
  const sizes = sizesFor({ standard: entry.id, grade: grade ?? undefined, own });
  const same = sizes.find((size) =>
    from?.tradeSize == null ? size.size_mm === from?.size_mm : size.tradeSize === from.tradeSize,
  );
  const range = entry.anySizeWithin_mm;
  const wanted_mm = from?.size_mm ?? null;
  if (same === undefined && range !== null && wanted_mm !== null && wanted_mm >= range[0] && wanted_mm <= range[1]) {
    return { size_mm: wanted_mm, tradeSize: null };
  }
  const near = sizes.toSorted((a, b) => Math.abs(a.size_mm - 8) - Math.abs(b.size_mm - 8))[0];
  const size = same ?? near;
  if (size === undefined) return { size_mm: Math.max(8, range?.[0] ?? 8), tradeSize: null };
  return size.tradeSize === null ? size : { size_mm: null, tradeSize: size.tradeSize };
}

interface SizeBlankProps {
  readonly entry: RulebookEntry;
  readonly chosen: SpecificationKey;
  readonly own: readonly OwnStandard[];
  readonly onSize: (size: Size) => void;
}

/** The sizes its tables list to choose from; where any size goes by rule, a field to type it. */
function SizeBlank({ entry, chosen, own, onSize }: SizeBlankProps) {
  if (entry.anySizeWithin_mm !== null)
    return <TypedSize range={entry.anySizeWithin_mm} chosen={chosen} onSize={onSize} />;
  const sizes = sizesFor({ standard: entry.id, grade: chosen.grade ?? undefined, own });
  const nameOf = ({ size_mm, tradeSize }: Size) => (tradeSize === null ? `${size_mm}` : `${tradeSize} in`);
  return (
    <ChoiceBlank
      label={words.size}
      value={nameOf(chosen)}
      options={sizes.map((size) => [
        nameOf(size),
        size.tradeSize === null ? `${size.size_mm} mm` : words.trade(size.tradeSize, size.size_mm),
      ])}
      onChoose={(name) => {
        const size = sizes.find((one) => nameOf(one) === name);
        if (size !== undefined) onSize(size.tradeSize === null ? size : { size_mm: null, tradeSize: size.tradeSize });
      }}
    />
  );
}

interface TypedSizeProps {
  readonly range: readonly [number, number];
  readonly chosen: SpecificationKey;
  readonly onSize: (size: Size) => void;
}

function TypedSize({ range: [least, greatest], chosen, onSize }: TypedSizeProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const holds = (size: number | null) => size !== null && size >= least && size <= greatest;
  const current = readNumber(typed ?? '') === chosen.size_mm ? typed : null;
  const shown = typed !== null && !holds(readNumber(typed)) ? typed : (current ?? `${chosen.size_mm ?? ''}`);
  const isSound = holds(readNumber(shown));
  return (
    <TextBlank
      label={words.size}
      unit="mm"
      isNumber
      value={shown}
      hint={isSound ? words.any(least, greatest) : null}
      fault={isSound ? null : words.any(least, greatest)}
      onText={(next) => {
        setTyped(next);
        const size = readNumber(next);
        if (size !== null && holds(size)) onSize({ size_mm: size, tradeSize: null });
      }}
    />
  );
}
