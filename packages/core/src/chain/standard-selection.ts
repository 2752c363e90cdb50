import { InputError } from '../errors.ts';
import type { Sources } from './provenance.ts';
import { rulebook, type StandardEntry } from './rulebook.ts';

/** An own specification: a rulebook entry with the sources it names, beside the published ones. */
export interface OwnStandard extends StandardEntry {
  readonly sources: Sources;
}

/** A rulebook entry with all sources its values may name. */
export interface ChosenStandard {
  readonly entry: StandardEntry;
  readonly sources: Sources;
  readonly isOwn: boolean;
}

/** Names under which a standard is known besides its own; each the same document, not a kindred one. */
const otherNames: Readonly<Record<string, readonly string[]>> = {
  'ISO 4565': ['EN 24565'],
  'IACS UR W18': ['UR W18', 'W18'],
  'IACS UR W22': ['UR W22', 'W22'],
};

/** Id of a standard for links and commands: `en-818-3`, `astm-a413`, `iacs-ur-w22`. */
export function standardId(standard: string): string {
  const name = standard.split('/')[0] ?? standard;
  return name
    .replace(/ series$/, '')
    .trim()
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
}

/**
 * The standard under an id or a name (`en-818-3`, `EN 818-3`, `ASTM A413`), own specifications first.
 *
 * @throws InputError `chain/unknown-standard`, listing what there is
 */
export function chooseStandard(name: string, own: readonly OwnStandard[] = []): ChosenStandard {
  const wanted = standardId(name);
  for (const entry of own) {
    if (standardId(entry.id) === wanted) {
      return { entry, sources: { ...rulebook.sources, ...entry.sources }, isOwn: true };
    }
  }
  for (const entry of rulebook.standards) {
    const names = [entry.id, ...(otherNames[entry.id] ?? [])].map(standardId);
    if (names.includes(wanted)) return { entry, sources: rulebook.sources, isOwn: false };
  }
  const choices = ['grade-definition', ...[...rulebook.standards, ...own].map((entry) => standardId(entry.id))];
  throw new InputError(
    'chain/unknown-standard',
    `There is no standard "${name}" in the rulebook. It has: ${choices.join(', ')}.`,
    { standard: name, choices },
  );
}
