import type { Row } from '@provinghouse/contract';
import type { Random } from '@provinghouse/rig/practice';
import type { Supplier } from './suppliers.ts';

type Reading = Row<'zinc'>;

const surveyedLink = 2;
const readingsPerLink = 5;

/** Mean zinc on each link of a piece, um: it varies along a chain with how each link hung and drained. */
export function drawZinc(supplier: Supplier, links: number, random: Random): number[] {
  const { mean_um, scatter_um } = supplier.zinc;
  return Array.from({ length: links }, () => random.normal(mean_um, 0.6 * scatter_um));
}

/** Five readings on one link before the pull, and one look at the same link after it. */
export function surveyZinc(piece: string, supplier: Supplier, zinc_um: readonly number[], random: Random): Reading[] {
  const mean_um = zinc_um[surveyedLink - 1] ?? supplier.zinc.mean_um;
  const before = Array.from({ length: readingsPerLink }, (_, i): Reading => {
    const thickness_um = Math.round(random.normal(mean_um, supplier.zinc.scatter_um));
    return row(piece, i + 1, { thickness_um, instrument: 'COAT-1', by: 'plover' });
  });
  return [...before, row(piece, readingsPerLink + 1, { ...lookAfter(supplier, random), by: 'teal' })];
}

const appearance: Readonly<Record<number, string>> = {
  0: 'unchanged but for the contact spots',
  1: 'fine crazing across the legs, seen with the lens only',
  2: 'cracked across the legs, every scale holds',
  3: 'small flakes off the outside of the crowns, alloy layer left on the steel',
  4: 'flakes off crowns and shoulders, bare steel in the middle of the patches',
};

function lookAfter(supplier: Supplier, random: Random): Partial<Reading> {
  const adherence = random.pick(supplier.zinc.adherence);
  const flaked_share_pct =
    adherence === 4 ? Math.round(random.between(12, 28)) : adherence === 3 ? Math.round(random.between(4, 9)) : 0;
  return { adherence, flaked_share_pct, note: `after the pull: ${appearance[adherence] ?? 'not described'}` };
}

function row(piece: string, reading: number, cells: Partial<Reading>): Reading {
  return {
    piece,
    link: surveyedLink,
    reading,
    thickness_um: null,
    adherence: null,
    flaked_share_pct: null,
    instrument: null,
    by: null,
    note: null,
    ...cells,
  };
}
