import type { LongChainCurve } from './long-chain-curve.ts';
import { type Reach, reachesAlong } from './long-chain-stretch.ts';
import { percentWords } from './sheet/number-words.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';

/** A row for each length of the curve: middle, mean, scatter, what is held, the governing mode, and what it rests on. */
export function longChainCurveTable({ finding, pieces }: LongChainCurve): FigureTable {
  const exceeded = finding.curve[0]?.exceeded ?? [];
  const reaches = reachesAlong({ finding, pieces });
  const share = (survival: number) => `${Number((100 * survival).toPrecision(4))}`;
  return {
    columns: [
      numberColumn('length_m', 'length', 'm', { digits: 3, of: 'each' }),
      numberColumn('links', 'links', null),
      numberColumn('median_kN', 'half hold more than', 'kN', { digits: 3 }),
      numberColumn('mean_kN', 'mean', 'kN', { digits: 3 }),
      numberColumn('cov_pct', 'scatter', '%', { digits: 2 }),
      ...exceeded.flatMap(({ survival }) => [
        numberColumn(
          `held_by_${share(survival)}_pct_estimate_kN`,
          `${percentWords(survival)} hold more than, estimate`,
          'kN',
        ),
        numberColumn(
          `held_by_${share(survival)}_pct_bound_kN`,
          `the same, ${percentWords(finding.inputs.confidence)} sure`,
          'kN',
        ),
      ]),
      textColumn('governing_mode', 'governs'),
      textColumn('rests_on', 'rests on'),
    ],
    rows: finding.curve.map((chain, index) => [
      chain.length_m,
      chain.links,
      chain.median_kN,
      chain.mean_kN,
      chain.cov_pct,
      ...chain.exceeded.flatMap((one) => [one.estimate_kN, one.bound_kN]),
      chain.shares[0]?.mode ?? null,
      restsOn[reaches[index] ?? 'prior'],
    ]),
  };
}

const restsOn: Readonly<Record<Reach, string>> = { pieces: 'pieces', form: 'Weibull form', prior: 'assumed shape' };
