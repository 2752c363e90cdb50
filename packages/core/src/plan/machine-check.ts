import { forceClassOf, leastForceOfClass } from '../uncertainty/instrument-class.ts';

/** A rig as its certificate and data sheet tell it; null: not known. */
export interface PlannedRig {
  readonly instrument: string;
  readonly rangeMinimum_kN: number | null;
  readonly rangeMaximum_kN: number | null;
  /** Class of ISO 7500-1 on the certificate. */
  readonly class: number | null;
  readonly resolution_kN: number | null;
}

export interface PlannedForces {
  /** Least and greatest force that must be read: of the weakest and the strongest product expected. */
  readonly least_kN: number;
  readonly greatest_kN: number;
  /** Factor by which a piece may surpass what is expected; 1.25 unless said otherwise (common practice). */
  readonly margin?: number;
  /** Class the method asks for; 1 unless said otherwise (common practice for break tests). */
  readonly askedClass?: number;
}

export interface MachineFinding {
  readonly what: 'upper end of the range' | 'lower end of the range' | 'class' | 'resolution';
  /** Null: what is needed to tell is not known. */
  readonly isMet: boolean | null;
  readonly sentence: string;
}

export interface MachineCheck {
  readonly findings: readonly MachineFinding[];
  /** Null where something is not known and nothing is failed. */
  readonly isSuited: boolean | null;
  readonly method: string;
  readonly sentence: string;
}

/**
 * Whether a rig suits the forces expected: greatest force times margin inside the verified range, least force not below it, class good
 * enough, and resolution fine enough for the class at the least force (ISO 7500-1 Table 2, memory).
 * @throws RangeError for forces not above 0 or out of order, a margin below 1, a class the standard does not have
 */
export function checkMachine(rig: PlannedRig, forces: PlannedForces): MachineCheck {
  requireSound(forces);
  const findings = [
    upperEnd(rig, forces),
    lowerEnd(rig, forces),
    classFinding(rig, forces),
    resolutionFinding(rig, forces),
  ];
  const isSuited = findings.some(({ isMet }) => isMet === false)
    ? false
    : findings.every(({ isMet }) => isMet === true)
      ? true
      : null;
  const open = findings.filter(({ isMet }) => isMet !== true).map(({ sentence }) => sentence);
  return {
    findings,
    isSuited,
    method: 'Verified range of the certificate and classes of ISO 7500-1:2018 Table 2 (memory)',
    sentence:
      isSuited === true
        ? `${rig.instrument} suits forces of ${forces.least_kN} to ${forces.greatest_kN} kN.`
        : `${rig.instrument} ${isSuited === false ? 'does not suit' : 'cannot be said to suit'} forces of ${forces.least_kN} to ${forces.greatest_kN} kN: ${open.join(' ')}`,
  };
}

function upperEnd({ rangeMaximum_kN: end }: PlannedRig, { greatest_kN, margin = 1.25 }: PlannedForces): MachineFinding {
  const what = 'upper end of the range';
  const needed = Number((greatest_kN * margin).toPrecision(4));
  if (end === null) return { what, isMet: null, sentence: 'The end of its verified range is not known.' };
  const isMet = greatest_kN * margin <= end;
  return {
    what,
    isMet,
    sentence: `Its verified range ends at ${end} kN; ${needed} kN ${isMet ? 'may occur' : 'may occur, which it would clip'}.`,
  };
}

function lowerEnd({ rangeMinimum_kN: begin }: PlannedRig, { least_kN }: PlannedForces): MachineFinding {
  const what = 'lower end of the range';
  if (begin === null) return { what, isMet: null, sentence: 'The beginning of its verified range is not known.' };
  return {
    what,
    isMet: least_kN >= begin,
    sentence: `Its verified range begins at ${begin} kN; the least force expected is ${least_kN} kN.`,
  };
}

function classFinding(rig: PlannedRig, { askedClass = 1 }: PlannedForces): MachineFinding {
  const what = 'class';
  if (forceClassOf(askedClass) === null) throw new RangeError(`ISO 7500-1 has no class ${askedClass}`);
  if (rig.class === null) return { what, isMet: null, sentence: 'Its class is not known.' };
  return {
    what,
    isMet: rig.class <= askedClass,
    sentence: `It is of class ${rig.class}; class ${askedClass} or better is asked.`,
  };
}

function resolutionFinding(rig: PlannedRig, { least_kN, askedClass = 1 }: PlannedForces): MachineFinding {
  const what = 'resolution';
  const known = forceClassOf(rig.class ?? askedClass);
  if (rig.resolution_kN === null || known === null)
    return { what, isMet: null, sentence: 'Its resolution or the demand of its class is not known.' };
  const least = leastForceOfClass(known, rig.resolution_kN);
  return {
    what,
    isMet: least_kN >= least,
    sentence: `Steps of ${rig.resolution_kN} kN serve class ${known.class} from ${Number(least.toPrecision(3))} kN up.`,
  };
}

function requireSound({ least_kN, greatest_kN, margin = 1.25 }: PlannedForces): void {
  if (!(least_kN > 0 && greatest_kN >= least_kN && Number.isFinite(greatest_kN)))
    throw new RangeError('forces are above 0, the least not above the greatest');
  if (!(margin >= 1 && Number.isFinite(margin))) throw new RangeError('a margin is a factor of at least 1');
}
