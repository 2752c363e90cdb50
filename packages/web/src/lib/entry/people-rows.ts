import { type Row, rowWith } from '@provinghouse/contract';

/** The row of a person who is not in the campaign yet, to be entered with what they did; none for one who is, or for nobody. */
export function peopleRows(held: readonly Row<'people'>[], person: string | null): readonly Row<'people'>[] {
  if (person === null || held.some((row) => row.person === person)) return [];
  // The short name stands for the name until somebody corrects it.
  return [rowWith('people', { person, name: person })];
}
