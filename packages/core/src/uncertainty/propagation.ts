import { type Budget, type BudgetTerm, budget } from './budget.ts';
import { type Correlation, correlationBetween } from './correlation.ts';
import type { CoverageWish } from './coverage.ts';
import { type InputDistribution, type InputStatement, statementOf } from './input-distribution.ts';

/** One input of a measurement model. */
export interface ModelInput {
  readonly name: string;
  readonly unit: string;
  readonly distribution: InputDistribution;
  readonly source: string;
}

/** A result as a function of its inputs, in the order of `inputs`. */
export interface MeasurementModel {
  readonly quantity: string;
  readonly unit: string;
  /** Several inputs of one name are one cause that acts anew each time, with the same uncertainty: one line of the budget. */
  readonly inputs: readonly ModelInput[];
  readonly evaluate: (values: readonly number[]) => number;
  /** Between inputs whose names are then all different. */
  readonly correlation?: readonly Correlation[];
  /** Parts that are not known and keep the uncertainty from being stated. */
  readonly unknown?: readonly string[];
  readonly doubts?: readonly string[];
}

/** A budget got from a model, with what the bend of the model adds. */
export interface Propagation {
  readonly budget: Budget;
  /** Combined standard uncertainty with the second-order terms (JCGM 100:2008 5.1.2 Note); null with correlated inputs. */
  readonly secondOrderStandardUncertainty: number | null;
  /** The first order alone is more than 5 % too small: the expanded uncertainty of the budget must not be published. */
  readonly isBent: boolean;
}

/** Differences of the model are taken over this share of the standard uncertainty, then half of it. */
const step = 0.25;

/**
 * Propagates uncertainty through a model: sensitivities by central differences over a share of each standard uncertainty with one
 * Richardson step (exact for polynomials of the fourth degree; see JCGM 100:2008 5.1.3 Note 2), then {@link budget}.
 * The second-order terms are worked out beside it, and a model that bends too much over its uncertainties is reported in the doubts.
 *
 * @throws RangeError where the model gives no finite number at the estimates or beside them
 */
export function propagate(model: MeasurementModel, options: { readonly coverage?: CoverageWish } = {}): Propagation {
  const statements = model.inputs.map(({ distribution }) => statementOf(distribution));
  const scaled = scaledModel(model, statements);
  const slopes = statements.map((_, index) => scaled.slope(index));
  const isCorrelated = (model.correlation ?? []).length > 0;
  const first = Math.hypot(...slopes);
  const second = isCorrelated ? null : Math.sqrt(Math.max(0, first ** 2 + secondOrder(scaled, slopes)));
  const isBent = second !== null && second > 1.05 * first;
  const found = budget({
    quantity: model.quantity,
    unit: model.unit,
    value: scaled.at([]),
    terms: merged(model.inputs.map((input, index) => termOf(input, statements[index] ?? nothing, slopes[index] ?? 0))),
    ...(model.correlation ? { correlation: model.correlation } : {}),
    ...(options.coverage ? { coverage: options.coverage } : {}),
    ...(model.unknown ? { unknown: model.unknown } : {}),
    doubts: [...(model.doubts ?? []), ...(isBent ? [bentDoubt(first, second ?? first)] : [])],
  });
  return { budget: found, secondOrderStandardUncertainty: second, isBent };
}

const nothing: InputStatement = { estimate: 0, standardUncertainty: 0, degreesOfFreedom: Infinity };

function termOf(input: ModelInput, statement: InputStatement, slope: number): BudgetTerm {
  const { estimate, standardUncertainty, degreesOfFreedom } = statement;
  return {
    name: input.name,
    estimate,
    unit: input.unit,
    standardUncertainty,
    sensitivity: standardUncertainty === 0 ? 0 : slope / standardUncertainty,
    degreesOfFreedom,
    distribution: input.distribution.kind,
    source: input.source,
  };
}

/** Inputs of one name are one cause that acts anew on each reading: one line, effects added in squares. */
function merged(terms: readonly BudgetTerm[]): readonly BudgetTerm[] {
  return [...Map.groupBy(terms, ({ name }) => name).values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined || group.length === 1) return group;
    const sensitivity = Math.hypot(...group.map((term) => term.sensitivity));
    return [{ ...first, sensitivity, source: `${first.source}; ${group.length} times` }];
  });
}

function bentDoubt(first: number, second: number): string {
  return `The model bends over the range of its inputs: the linear budget gives ${first.toPrecision(3)}, with the second order it is ${second.toPrecision(3)}. Use the Monte Carlo result.`;
}

interface Shift {
  readonly index: number;
  /** In standard uncertainties. */
  readonly by: number;
}

interface ScaledModel {
  readonly count: number;
  readonly at: (shifts: readonly Shift[]) => number;
  /** Change of the result per standard uncertainty of an input; 0 for an input without one. */
  readonly slope: (index: number) => number;
}

function scaledModel(
  model: MeasurementModel,
  statements: readonly { readonly estimate: number; readonly standardUncertainty: number }[],
): ScaledModel {
  const estimates = statements.map(({ estimate }) => estimate);
  const at = (shifts: readonly Shift[]) => {
    const values = [...estimates];
    for (const { index, by } of shifts)
      values[index] = (values[index] ?? 0) + by * (statements[index]?.standardUncertainty ?? 0);
    const result = model.evaluate(values);
    if (!Number.isFinite(result))
      throw new RangeError(`the model of the ${model.quantity} gives ${result} near its estimates`);
    return result;
  };
  const central = (index: number, by: number) => (at([{ index, by }]) - at([{ index, by: -by }])) / (2 * by);
  return {
    count: statements.length,
    at,
    slope: (index) => (4 * central(index, step / 2) - central(index, step)) / 3,
  };
}

/**
 * Sum over i, j of f_ij^2 / 2 + f_i f_ijj, in scaled inputs (JCGM 100:2008 5.1.2 Note). The four corners of each pair serve the mixed
 * second derivative and both third ones, so n inputs take 2 n^2 evaluations.
 */
function secondOrder({ count, at }: ScaledModel, slopes: readonly number[]): number {
  const centre = at([]);
  const along = (index: number, by: number) => at([{ index, by }]);
  const up = slopes.map((_, index) => along(index, step));
  const down = slopes.map((_, index) => along(index, -step));
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const [above = 0, below = 0] = [up[i], down[i]];
    const bend = (above - 2 * centre + below) / step ** 2;
    const third = (along(i, 2 * step) - 2 * above + 2 * below - along(i, -2 * step)) / (2 * step ** 3);
    sum += 0.5 * bend ** 2 + (slopes[i] ?? 0) * third;
    for (let j = 0; j < i; j++) {
      const corner = (a: number, b: number) =>
        at([
          { index: i, by: a * step },
          { index: j, by: b * step },
        ]);
      const [pp, pm, mp, mm] = [corner(1, 1), corner(1, -1), corner(-1, 1), corner(-1, -1)];
      const cross = (pp - pm - mp + mm) / (4 * step ** 2);
      const iThenJJ = (pp + pm - mp - mm - 2 * (above - below)) / (2 * step ** 3);
      const jThenII = (pp + mp - pm - mm - 2 * ((up[j] ?? 0) - (down[j] ?? 0))) / (2 * step ** 3);
      // The pair counts twice, once from each end.
      sum += cross ** 2 + (slopes[i] ?? 0) * iThenJJ + (slopes[j] ?? 0) * jThenII;
    }
  }
  return sum;
}

/** Several results of the same inputs: their uncertainties and how they hang together. */
export interface JointPropagation {
  readonly results: readonly {
    readonly quantity: string;
    readonly value: number;
    readonly standardUncertainty: number;
  }[];
  /** Correlation coefficients of the results; 0 where one has no uncertainty. */
  readonly correlation: readonly (readonly number[])[];
}

/**
 * Propagates through several models of the same inputs (JCGM 100:2008 H.2.3): covariance of results l and m is the sum over i, j of
 * c_li u_i r_ij u_j c_mj.
 */
export function propagateJointly(
  models: readonly Pick<MeasurementModel, 'quantity' | 'evaluate'>[],
  inputs: readonly ModelInput[],
  correlation: readonly Correlation[] = [],
): JointPropagation {
  const statements = inputs.map(({ distribution }) => statementOf(distribution));
  const between = correlationBetween(
    inputs.map(({ name }) => name),
    correlation,
  );
  const scaled = models.map((model) => scaledModel({ ...model, unit: '', inputs }, statements));
  const slopes = scaled.map((one) => inputs.map((_, index) => one.slope(index)));
  const covariance = slopes.map((a) => slopes.map((b) => product(a, between, b)));
  const spread = covariance.map((row, index) => Math.sqrt(Math.max(0, row[index] ?? 0)));
  return {
    results: models.map(({ quantity }, index) => ({
      quantity,
      value: scaled[index]?.at([]) ?? 0,
      standardUncertainty: spread[index] ?? 0,
    })),
    correlation: covariance.map((row, l) =>
      row.map((value, m) => {
        const scale = (spread[l] ?? 0) * (spread[m] ?? 0);
        return l === m ? 1 : scale === 0 ? 0 : value / scale;
      }),
    ),
  };
}

function product(a: readonly number[], between: readonly (readonly number[])[], b: readonly number[]): number {
  let sum = 0;
  for (const [i, row] of between.entries()) for (const [j, r] of row.entries()) sum += (a[i] ?? 0) * r * (b[j] ?? 0);
  return sum;
}
