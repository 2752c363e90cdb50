import { tidy } from './bench-unit.ts';
import type { OwnDraft, OwnLimit } from './own-draft.ts';
import type { Sources } from './provenance.ts';
import { type Column, type Row, rulebook, type Source, type SuspectCells, type Table } from './rulebook.ts';
import { type Limit, type Quantity, quantityNames, quantityUnits, type Specification } from './specification.ts';

interface Writing {
  readonly base: Specification;
  readonly draft: OwnDraft;
  readonly isChanged: (limit: OwnLimit) => boolean;
}

/** A cell of the one row: the quantity of the file, its number. */
interface Cell {
  readonly name: string;
  readonly quantity: string;
  readonly value: number;
}

/** The one table of an own specification, with the sources that the rulebook does not have. */
export function ownTable({ base, draft, isChanged }: Writing): { readonly table: Table; readonly sources: Sources } {
  const size_mm = base.nominalSize_mm;
  const columns: Record<string, Column> = { d: { quantity: 'nominalSize', unit: 'mm' } };
  const row: Record<string, number> = { d: size_mm };
  const sources: Record<string, Source> = {};
  const suspect: SuspectCells[] = [];
  const alternatives: NonNullable<Table['alternatives']>[number][] = [];
  for (const limit of draft.limits) {
    const cells = cellsOf(limit, size_mm);
    const from = isChanged(limit) ? null : (base.limits.find(({ quantity }) => quantity === limit.quantity) ?? null);
    const rests = from === null ? changed(limit) : takenOver(from, base);
    if (cells.length > 0) Object.assign(sources, rests.sources);
    for (const { name, quantity, value } of cells) {
      columns[name] = { quantity, unit: quantityUnits[limit.quantity], ...rests.column };
      row[name] = value;
    }
    const [first] = cells;
    if (from === null || first === undefined) continue;
    if (from.provenance.flags.includes('suspect'))
      suspect.push({ d: size_mm, columns: [first.name], why: from.provenance.note ?? 'suspect' });
    for (const { value, citation } of from.provenance.alternatives)
      alternatives.push({ d: size_mm, column: first.name, value, source: citation });
  }
  return {
    table: {
      id: 'limits',
      key: 'd',
      ...(draft.grade === null ? {} : { grade: draft.grade }),
      about: `made from ${base.title}`,
      columns,
      rows: [row satisfies Row],
      suspect,
      alternatives,
    },
    sources,
  };
}

interface Rests {
  readonly column: Pick<Column, 'sources' | 'crossChecked' | 'derived' | 'note'>;
  readonly sources: Sources;
}

function changed({ quantity, source }: OwnLimit): Rests {
  const id = `own-${quantity}`;
  return {
    column: { sources: [id], crossChecked: false },
    sources: { [id]: { kind: 'own', citation: source.trim() } },
  };
}

/** Sources that the rulebook has go by their id; those of an own base are written out again. */
function takenOver({ provenance, place, quantity }: Limit, base: Specification): Rests {
  const { citations, crossChecked, flags, note } = provenance;
  const own = citations.filter(({ id }) => rulebook.sources[id] === undefined);
  const where = `as ${quantityNames[quantity]} in ${base.title}, ${place}`;
  return {
    column: {
      sources: citations.map(({ id }) => id),
      crossChecked,
      ...(flags.includes('derived') ? { derived: `in ${base.title}` } : {}),
      note: note === null ? where : `${where}; ${note}`,
    },
    sources: Object.fromEntries(own.map(({ id, kind, text }) => [id, { kind, citation: text }])),
  };
}

const bounds: Readonly<Partial<Record<Quantity, { readonly lower?: string; readonly upper?: string }>>> = {
  weldDiameter: { upper: 'weldDiameterMax' },
  innerWidth: { lower: 'innerWidthMin' },
  outerWidth: { upper: 'outerWidthMax' },
  outerLength: { lower: 'outerLengthMin', upper: 'outerLengthMax' },
  breakingForce: { lower: 'breakingForceMin' },
  proofForce: { lower: 'proofForce' },
  elongation: { lower: 'elongationMin' },
  bendDeflection: { lower: 'bendDeflectionMin' },
};

/** A pitch, a length and a diameter stand in the file as a nominal value with signed deviations. */
function cellsOf({ quantity, lower, nominal, upper }: OwnLimit, size_mm: number): readonly Cell[] {
  const cell = (name: string, of: string, value: number | null): readonly Cell[] =>
    value === null ? [] : [{ name, quantity: of, value: tidy(value) }];
  const from = (bound: number | null, start: number | null) =>
    bound === null || start === null ? null : bound - start;
  switch (quantity) {
    case 'diameter':
      return [
        ...cell('diameterUpper', 'diameterTolerance', from(upper, size_mm)),
        ...cell('diameterLower', 'diameterTolerance', from(lower, size_mm)),
      ];
    case 'pitch':
      return [
        ...cell('pitch', 'pitch', nominal),
        ...cell('pitchUpper', 'pitchUpper', from(upper, nominal)),
        ...cell('pitchLower', 'pitchLower', from(lower, nominal)),
      ];
    case 'lengthOverLinks':
      return [
        ...cell('gaugeLength11', 'gaugeLength11', nominal),
        ...cell('gaugeLength11Upper', 'gaugeLength11Upper', from(upper, nominal)),
        ...cell('gaugeLength11Lower', 'gaugeLength11Lower', from(lower, nominal)),
      ];
    case 'massPerMetre':
    case 'workingLoadLimit':
      return cell(quantity, quantity, nominal);
    default: {
      const { lower: least, upper: greatest } = bounds[quantity] ?? {};
      return [
        ...(least === undefined ? [] : cell(least, least, lower)),
        ...(greatest === undefined ? [] : cell(greatest, greatest, upper)),
      ];
    }
  }
}
