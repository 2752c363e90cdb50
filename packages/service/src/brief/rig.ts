import type {
  CampaignFinding,
  Expectation,
  PlanBasis,
  ProductFinding,
  RigBrief,
  RigCheck,
  Row,
} from '@provinghouse/contract';
import { checkMachine, type PlannedRig } from '@provinghouse/core';

/** How far a piece may surpass what is expected; common practice. */
const margin = 1.25;

type Expected = readonly { readonly product: ProductFinding; readonly expectations: readonly Expectation[] }[];

/** Every rig of the campaign against the forces expected, size by size. */
export function rigsOf(finding: CampaignFinding, expected: Expected): RigBrief[] {
  const forces = forcesOf(expected);
  return finding.instruments
    .filter(({ kind }) => kind === 'rig')
    .map((row) => {
      const rig = plannedRig(row);
      return {
        rig: row.instrument,
        description: row.description,
        rangeMinimum_kN: rig.rangeMinimum_kN,
        rangeMaximum_kN: rig.rangeMaximum_kN,
        class: rig.class,
        resolution_kN: rig.resolution_kN,
        certificate: certificateOf(row.instrument, finding),
        checks: forces.map((known): RigCheck => ({ ...known, margin, check: checkMachine(rig, { ...known, margin }) })),
        pulls: finding.pieces.filter(({ pull }) => pull?.rig === row.instrument).length,
      };
    });
}

/** A rig whose numbers are not in kN is one of which nothing is known. */
function plannedRig(row: Row<'instruments'>): PlannedRig {
  const isForce = row.unit === 'kN';
  return {
    instrument: row.instrument,
    rangeMinimum_kN: isForce ? row.range_minimum : null,
    rangeMaximum_kN: isForce ? row.range_maximum : null,
    class: row.class,
    resolution_kN: isForce ? row.resolution : null,
  };
}

function certificateOf(instrument: string, { calibrations }: CampaignFinding): RigBrief['certificate'] {
  const [newest] = calibrations
    .filter((row) => row.instrument === instrument)
    .sort((a, b) => b.calibrated_on.localeCompare(a.calibrated_on));
  if (!newest) return null;
  return { number: newest.calibration, calibratedOn: newest.calibrated_on, dueOn: newest.due_on };
}

type Forces = Omit<RigCheck, 'check' | 'margin'>;

/** Least and greatest force of each size: before a pull of the means assumed, after it of the forces that were read. */
function forcesOf(expected: Expected): Forces[] {
  const sizes = [...Map.groupBy(expected, ({ product }) => product.nominalSize_mm)].sort(([a], [b]) => a - b);
  return sizes.flatMap(([nominalSize_mm, group]) => [
    ...span(nominalSize_mm, 'assumed', group.flatMap(assumedMeans)),
    ...span(nominalSize_mm, 'found', group.flatMap(forcesRead)),
  ]);
}

function assumedMeans({ expectations }: Expected[number]): number[] {
  return expectations.flatMap(({ basis, mean_kN }) => (basis === 'assumed' ? (mean_kN.value ?? []) : []));
}

/** A force known only as "at least" must be reached too. */
function forcesRead({ product }: Expected[number]): number[] {
  const { least, greatest, atLeast } = product.breakingForce;
  return [least, greatest, ...atLeast.map(({ value }) => value)].flatMap((force) => force ?? []);
}

function span(nominalSize_mm: number, basis: PlanBasis, forces_kN: readonly number[]): Forces[] {
  const sound = forces_kN.filter((force) => force > 0);
  if (sound.length === 0) return [];
  const [least_kN, greatest_kN] = [Math.min(...sound), Math.max(...sound)].map((force) => Number(force.toPrecision(4)));
  if (least_kN === undefined || greatest_kN === undefined) return [];
  return [{ nominalSize_mm, basis, least_kN, greatest_kN }];
}
