import { studentQuantile } from '../distribution/index.ts';
import { refuseConfidence } from './group.ts';
import { percentWords, valueWords } from './plain-words.ts';
import { type Estimate, type RankProbability, rankEstimates } from './rank-probability.ts';

/** A number and how well it is known. */
export interface UncertainNumber {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Of the standard uncertainty; null or absent when it is known as well as if from many values. */
  readonly degreesOfFreedom?: number | null;
}

export interface ValuedProduct {
  readonly name: string;
  /** Mean breaking force, with what is its own of the uncertainty (s / sqrt n, its own gauging). */
  readonly force_kN: UncertainNumber;
  readonly mass_kg_per_m?: UncertainNumber;
  /** In the currency given. */
  readonly price_per_m?: UncertainNumber;
  /** The breaking force the product is sold under. */
  readonly specifiedForce_kN?: number;
}

/** A worth with its uncertainty; the limits hold for this product alone. */
export interface Worth {
  readonly name: string;
  readonly value: number | null;
  readonly unit: string;
  readonly standardUncertainty: number | null;
  readonly degreesOfFreedom: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

export interface WorthTable {
  readonly method: string;
  readonly worths: readonly Worth[];
  /** Probability of being the best, second, ... by this worth. */
  readonly order: RankProbability;
}

export interface ValueForMoney {
  readonly confidence: number;
  readonly forcePerMass: WorthTable;
  readonly forcePerPrice: WorthTable;
  /** (force / specified force - 1) in per cent. */
  readonly margin: WorthTable;
}

interface ValueOptions {
  readonly seed: number;
  readonly confidence?: number;
  readonly currency?: string;
  readonly draws?: number;
  /** Relative standard uncertainty that all forces share (the rig): widens every worth, leaves the order alone. */
  readonly sharedForceUncertainty?: number;
}

/**
 * What each product gives for its mass, its price and against its specification, uncertainty carried through by the
 * relative form of JCGM 100:2008 5.1.6, degrees of freedom by Welch and Satterthwaite (G.4.1), Student limits.
 * A worth whose inputs are missing or not above zero is null with its reason.
 */
export function valueForMoney(products: readonly ValuedProduct[], options: ValueOptions): ValueForMoney {
  const confidence = options.confidence ?? 0.95;
  refuseConfidence(confidence);
  products.forEach(refuseNumbers);
  const currency = options.currency ?? 'unit of price';
  const table = (unit: string, parts: (product: ValuedProduct) => Parts) =>
    worthTable(
      products.map((product) => ({ name: product.name, unit, ...parts(product) })),
      { ...options, confidence },
    );
  return {
    confidence,
    forcePerMass: table('kN per kg/m', ({ force_kN: force, mass_kg_per_m: by }) => ({ force, by, what: 'mass' })),
    forcePerPrice: table(`kN per ${currency}/m`, ({ force_kN: force, price_per_m: by }) => ({
      force,
      by,
      what: 'price',
    })),
    margin: table('%', ({ force_kN: force, specifiedForce_kN: limit }) => ({
      force,
      by: limit === undefined ? undefined : { value: limit, standardUncertainty: 0 },
      what: 'specified force',
    })),
  };
}

interface Parts {
  readonly force: UncertainNumber;
  readonly by: UncertainNumber | undefined;
  readonly what: 'mass' | 'price' | 'specified force';
}

interface Ratio {
  readonly value: number;
  readonly relative: number;
  readonly degreesOfFreedom: number | null;
}

function worthTable(
  rows: readonly (Parts & { readonly name: string; readonly unit: string })[],
  options: ValueOptions & { readonly confidence: number },
): WorthTable {
  const told = rows.map((row) => {
    const reason = lackOf(row);
    const ratio = reason === null && row.by ? ratioOf(row.force, row.by) : null;
    return { row, reason, ratio };
  });
  const estimates = told.flatMap(({ row, ratio }) => (ratio === null ? [] : [estimateOf(row, ratio)]));
  const order = rankEstimates(estimates, options);
  const notRanked = told.flatMap(({ row, reason }) => (reason === null ? [] : [{ name: row.name, reason }]));
  return {
    method: 'Ratio by first-order propagation of relative uncertainties (JCGM 100:2008 5.1.6, G.4.1)',
    worths: told.map(({ row, reason, ratio }) =>
      ratio === null ? without(row, reason) : worthOf(row, ratio, options),
    ),
    order: { ...order, notRanked },
  };
}

function lackOf({ force, by, what }: Parts): string | null {
  if (!by) return `no ${what} is given`;
  if (by.value <= 0) return `a ${what} of ${by.value} has no worth per ${what}`;
  if (force.value <= 0) return 'the force is not above zero';
  return null;
}

function ratioOf(force: UncertainNumber, by: UncertainNumber): Ratio {
  const parts = [force, by].map((part) => ({
    relative: part.standardUncertainty / part.value,
    degreesOfFreedom: part.degreesOfFreedom ?? Number.POSITIVE_INFINITY,
  }));
  const relative = Math.hypot(...parts.map((part) => part.relative));
  return { value: force.value / by.value, relative, degreesOfFreedom: effective(parts, relative) };
}

/** Welch and Satterthwaite, JCGM 100:2008 G.2b; null when nothing limits it. */
function effective(
  parts: readonly { readonly relative: number; readonly degreesOfFreedom: number }[],
  whole: number,
): number | null {
  if (whole === 0) return null;
  const inverse = parts.reduce((sum, part) => sum + (part.relative / whole) ** 4 / part.degreesOfFreedom, 0);
  return inverse === 0 ? null : 1 / inverse;
}

/** Per cent above 1 for a margin, the ratio itself for the others. */
function scaled({ what }: Parts, ratio: Ratio) {
  return what === 'specified force'
    ? { value: 100 * (ratio.value - 1), uncertaintyPerRelative: 100 * ratio.value }
    : { value: ratio.value, uncertaintyPerRelative: ratio.value };
}

function estimateOf(row: Parts & { readonly name: string }, ratio: Ratio): Estimate {
  const { value, uncertaintyPerRelative } = scaled(row, ratio);
  const standardUncertainty = uncertaintyPerRelative * ratio.relative;
  return { name: row.name, value, standardUncertainty, degreesOfFreedom: ratio.degreesOfFreedom };
}

function worthOf(
  row: Parts & { readonly name: string; readonly unit: string },
  own: Ratio,
  options: ValueOptions & { readonly confidence: number },
): Worth {
  const shared = options.sharedForceUncertainty ?? 0;
  const relative = Math.hypot(own.relative, shared);
  const parts = [
    { relative: own.relative, degreesOfFreedom: own.degreesOfFreedom ?? Number.POSITIVE_INFINITY },
    { relative: shared, degreesOfFreedom: Number.POSITIVE_INFINITY },
  ];
  const degreesOfFreedom = effective(parts, relative);
  const { value, uncertaintyPerRelative } = scaled(row, own);
  const standardUncertainty = uncertaintyPerRelative * relative;
  const factor = studentQuantile(0.5 + options.confidence / 2, degreesOfFreedom ?? Number.POSITIVE_INFINITY);
  const limits = { lower: value - factor * standardUncertainty, upper: value + factor * standardUncertainty };
  const { name, unit } = row;
  return {
    name,
    value,
    unit,
    standardUncertainty,
    degreesOfFreedom,
    ...limits,
    doubts: linearDoubts(row),
    sentence: sentenceOf({ row, value, standardUncertainty, ...limits, confidence: options.confidence }),
  };
}

function linearDoubts({ by, what }: Parts): string[] {
  if (!by || by.standardUncertainty / by.value <= 0.1) return [];
  return [`the ${what} is uncertain by more than 10 %: the limits are rough, the true ones are not symmetric`];
}

function sentenceOf(told: {
  readonly row: Parts & { readonly name: string; readonly unit: string };
  readonly value: number;
  readonly standardUncertainty: number;
  readonly lower: number;
  readonly upper: number;
  readonly confidence: number;
}): string {
  const { row, lower, upper, standardUncertainty: uncertainty, confidence } = told;
  const plain = (value: number) => valueWords(value, { uncertainty, unit: '' });
  const range = uncertainty === 0 ? '' : ` (${plain(lower)} to ${plain(upper)}, ${percentWords(confidence)})`;
  if (row.what !== 'specified force') return `${row.name} gives ${plain(told.value)} ${row.unit}${range}.`;
  const side = told.value < 0 ? 'below' : 'above';
  return `${row.name} lies ${plain(Math.abs(told.value))} % ${side} its specified force${range.replace('(', '(margin ')}.`;
}

function without(row: { readonly name: string; readonly unit: string }, reason: string | null): Worth {
  const why = reason ?? 'the data do not carry it';
  return {
    name: row.name,
    value: null,
    unit: row.unit,
    standardUncertainty: null,
    degreesOfFreedom: null,
    lower: null,
    upper: null,
    doubts: [why],
    sentence: `${row.name}: not told, because ${why}.`,
  };
}

function refuseNumbers(product: ValuedProduct): void {
  const numbers = [product.force_kN, product.mass_kg_per_m, product.price_per_m].flatMap((part) =>
    part ? [part] : [],
  );
  const fair = numbers.every(
    ({ value, standardUncertainty: u, degreesOfFreedom: nu }) =>
      Number.isFinite(value) && Number.isFinite(u) && u >= 0 && (nu === undefined || nu === null || nu > 0),
  );
  const limit = product.specifiedForce_kN;
  if (!fair || (limit !== undefined && !Number.isFinite(limit))) {
    throw new RangeError(`${product.name}: values are finite, uncertainties not negative, degrees of freedom above 0`);
  }
}
