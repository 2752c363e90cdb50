import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import {
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

/** What the pieces of a product say about a long chain, and the law of its break modes. */
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
    </StatisticFigures>
  );
}
