import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import {
  budgetBars,
  budgetBarsTable,
  budgetOf,
  type FigureSetting,
  longChainCurve,
  longChainCurveTable,
  longChainOf,
  weibullFigure,
  weibullFigureTable,
} from '@provinghouse/figure';
import { useMemo } from 'react';
import { StatisticFigure, StatisticFigures } from '../../components/statistic-figure.tsx';
import { text } from '../../lib/text.ts';

interface ProductPicturesProps {
  readonly code: string;
  readonly product: ProductFinding;
  readonly pieces: readonly PieceFinding[];
}

/** What the pieces of a product say about a long chain, and what the uncertainty of its least force is made of. */
export default function ProductPictures({ code, product, pieces }: ProductPicturesProps) {
  const curve = useMemo(() => longChainOf(product, pieces), [product, pieces]);
  const drawCurve = useMemo(
    () => (curve === null ? null : (setting: FigureSetting) => longChainCurve(curve, setting)),
    [curve],
  );
  const drawPlot = useMemo(
    () =>
      curve === null || curve.finding.plots.length === 0
        ? null
        : (setting: FigureSetting) => weibullFigure(curve, setting),
    [curve],
  );
  const stem = `${code}-${product.product}`;
  return (
    <StatisticFigures>
      {curve === null || drawCurve === null ? null : (
        <StatisticFigure
          title={text.picture.longChain(product.product)}
          how={text.picture.longChainHow}
          file={`${stem}-long-chain`}
          draw={drawCurve}
          table={longChainCurveTable(curve)}
        />
      )}
      {curve === null || drawPlot === null ? null : (
        <StatisticFigure
          title={text.picture.weibull(product.product)}
          how={text.picture.weibullHow}
          file={`${stem}-weibull`}
          draw={drawPlot}
          table={weibullFigureTable(curve)}
        />
      )}
      <Budget stem={stem} product={product} pieces={pieces} />
    </StatisticFigures>
  );
}

interface BudgetProps extends Omit<ProductPicturesProps, 'code'> {
  readonly stem: string;
}

function Budget({ stem, product, pieces }: BudgetProps) {
  const found = useMemo(() => budgetOf(product, pieces), [product, pieces]);
  const draw = useMemo(
    () => (found === null ? null : (setting: FigureSetting) => budgetBars(found.budget, setting)),
    [found],
  );
  if (found === null || draw === null) return null;
  return (
    <StatisticFigure
      title={text.picture.budget(found.piece)}
      how={text.picture.budgetHow}
      file={`${stem}-budget`}
      draw={draw}
      table={budgetBarsTable(found.budget)}
    />
  );
}
