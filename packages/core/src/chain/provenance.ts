import type { CrossChecked, Source } from './rulebook.ts';
import type { Citation, Flag, Provenance } from './specification.ts';

export type Sources = Readonly<Record<string, Source>>;

const flagOrder: readonly Flag[] = ['memory', 'inference', 'suspect', 'conflict', 'derived'];

/**
 * The citation behind a source id: what the page is. Its address stays in the rulebook's file under that id, because many addresses
 * name a supplier, and no finding may.
 */
export function citationOf(id: string, sources: Sources): Citation {
  const source = sources[id];
  if (source === undefined) return { id, kind: 'unknown', text: id };
  return { id, kind: source.kind, text: source.about ?? source.citation ?? id };
}

/** Provenance of a value from its source ids; `flags` and `notes` add what the ids do not say. */
export function provenanceOf(facts: {
  readonly ids: readonly string[];
  readonly sources: Sources;
  readonly crossChecked: boolean;
  readonly flags?: readonly Flag[];
  readonly alternatives?: Provenance['alternatives'];
  readonly notes?: readonly (string | null | undefined)[];
}): Provenance {
  const alternatives = facts.alternatives ?? [];
  const flags = new Set<Flag>(facts.flags ?? []);
  if (facts.ids.includes('memory')) flags.add('memory');
  if (facts.ids.includes('inference')) flags.add('inference');
  const first = facts.ids[0];
  if (first !== undefined && first !== 'inference' && facts.sources[first]?.kind === 'formula') flags.add('derived');
  if (alternatives.length > 0) flags.add('conflict');
  return {
    citations: facts.ids.map((id) => citationOf(id, facts.sources)),
    crossChecked: facts.crossChecked,
    flags: flagOrder.filter((flag) => flags.has(flag)),
    alternatives,
    note: joinNotes(facts.notes ?? []),
  };
}

/** Provenance of a limit made of several values (a pitch and its tolerance): all sources, the worst of all marks. */
export function mergeProvenance(parts: readonly Provenance[]): Provenance {
  const citations = new Map(parts.flatMap((part) => part.citations).map((citation) => [citation.id, citation]));
  const flags = new Set(parts.flatMap((part) => part.flags));
  return {
    citations: [...citations.values()],
    crossChecked: parts.every((part) => part.crossChecked),
    flags: flagOrder.filter((flag) => flags.has(flag)),
    alternatives: parts.flatMap((part) => part.alternatives),
    note: joinNotes(parts.map((part) => part.note)),
  };
}

/** The same provenance with further flags, other values or a further note. */
export function withMarks(
  provenance: Provenance,
  marks: {
    readonly flags?: readonly Flag[];
    readonly alternatives?: Provenance['alternatives'];
    readonly note?: string | null;
  },
): Provenance {
  const flags = new Set([...provenance.flags, ...(marks.flags ?? [])]);
  const alternatives = [...provenance.alternatives, ...(marks.alternatives ?? [])];
  if (alternatives.length > 0) flags.add('conflict');
  return {
    ...provenance,
    alternatives,
    flags: flagOrder.filter((flag) => flags.has(flag)),
    note: joinNotes([provenance.note, marks.note]),
  };
}

/**
 * Whether a second page confirms a cell. A cell whose source is overridden counts only when its row is listed: the
 * column's general mark speaks of the column's own source.
 */
export function isCrossChecked(
  mark: CrossChecked | undefined,
  key: string | number | null,
  isOverridden: boolean,
): boolean {
  if (typeof mark === 'boolean' || mark === undefined) return mark === true && !isOverridden;
  return key !== null && mark.includes(key);
}

function joinNotes(notes: readonly (string | null | undefined)[]): string | null {
  const kept = [...new Set(notes.filter((note) => note !== null && note !== undefined && note !== ''))];
  return kept.length === 0 ? null : kept.join('; ');
}
