import type { Comparison, PieceFinding, ProductFinding } from '@provinghouse/contract';
import {
  breakingForceDots,
  breakingForceDotsTable,
  comparisonIntervals,
  comparisonIntervalsTable,
  dotsOf,
  type FigureSetting,
  intervalsOf,
} from '@provinghouse/figure';
import { useMemo } from 'react';
import { StatisticFigure, StatisticFigures } from '../../components/statistic-figure.tsx';
import { text } from '../../lib/text.ts';
import { sizeText } from './size-text.ts';

interface SizePicturesProps {
  readonly code: string;
  readonly comparison: Comparison;
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
}

/** Products of one size: every piece on one scale, then the differences of the means. */
export default function SizePictures({ code, comparison, products, pieces }: SizePicturesProps) {
  const dots = useMemo(() => dotsOf(products, pieces), [products, pieces]);
  const drawDots = useMemo(() => (setting: FigureSetting) => breakingForceDots(dots, setting), [dots]);
  const intervals = useMemo(() => intervalsOf(comparison.statistics), [comparison]);
  const drawIntervals = useMemo(
    () => (intervals === null ? null : (setting: FigureSetting) => comparisonIntervals(intervals, setting)),
    [intervals],
  );
  const size = sizeText([comparison]);
  const stem = `${code}-${comparison.nominalSize_mm}-mm`;
  return (
    <StatisticFigures>
      {dots.products.every((product) => product.pieces.length === 0) ? null : (
        <StatisticFigure
          title={text.findings.ofSize(text.findings.strip, size)}
          how={text.findings.stripHow}
          file={`${stem}-breaking-force`}
          draw={drawDots}
          table={breakingForceDotsTable(dots)}
        />
      )}
      {intervals === null || drawIntervals === null ? null : (
        <StatisticFigure
          title={text.findings.ofSize(text.picture.differences, size)}
          how={text.picture.differencesHow}
          file={`${stem}-differences`}
          draw={drawIntervals}
          table={comparisonIntervalsTable(intervals)}
        />
      )}
    </StatisticFigures>
  );
}
