import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { budgetBars, budgetBarsTable, budgetOf, type FigureSetting } from '@provinghouse/figure';
import { useMemo } from 'react';
import { StatisticFigure, StatisticFigures } from '../../components/statistic-figure.tsx';
import { text } from '../../lib/text.ts';

interface BudgetPictureProps {
  readonly code: string;
  readonly product: ProductFinding;
  readonly pieces: readonly PieceFinding[];
}

/** What the uncertainty of the least force of a product is made of. */
export default function BudgetPicture({ code, product, pieces }: BudgetPictureProps) {
  const found = useMemo(() => budgetOf(product, pieces), [product, pieces]);
  const draw = useMemo(
    () => (found === null ? null : (setting: FigureSetting) => budgetBars(found.budget, setting)),
    [found],
  );
  if (found === null || draw === null) return null;
  return (
    <StatisticFigures>
      <StatisticFigure
        title={text.picture.budget(found.piece)}
        how={text.picture.budgetHow}
        file={`${code}-${product.product}-budget`}
        draw={draw}
        table={budgetBarsTable(found.budget)}
      />
    </StatisticFigures>
  );
}
