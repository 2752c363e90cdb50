import type { MeasuredValue } from '@provinghouse/core';
import { type FigureInput, setFigure } from '../lib/figure.ts';
import { text } from '../lib/text.ts';

interface FigureProps extends Omit<FigureInput, 'value'> {
  readonly value: number | null;
  /** False rounds by the uncertainty and leaves it out: it stands elsewhere. */
  readonly withSpread?: boolean;
}

/** A number with its spread and unit; a dash with words for a reader's ear when there is none. */
export function Figure({ withSpread = true, ...input }: FigureProps) {
  if (input.value === null) {
    return (
      <span className="soft">
        <span aria-hidden="true">{text.none}</span>
        <span className="for-ears">{text.notRecorded}</span>
      </span>
    );
  }
  const { bound, value, spread, unit } = setFigure({ ...input, value: input.value });
  return (
    <span className="figure">
      {bound}
      {value}
      {spread === null || !withSpread ? null : <span className="figure-spread"> ± {spread}</span>}
      {unit === '' ? null : <span className="unit">{unit}</span>}
    </span>
  );
}

/** A measured value with its expanded uncertainty. */
export function Measured({ measured }: { readonly measured: MeasuredValue }) {
  const { value, unit, expandedUncertainty, isAtLeast } = measured;
  return <Figure value={value} unit={unit} uncertainty={expandedUncertainty} isAtLeast={isAtLeast} />;
}

/** A scatter or an uncertainty on its own, to two significant digits; a dash when there is none. */
export function Spread({ value, unit }: { readonly value: number | null; readonly unit: string }) {
  if (value === null || value < 1e-99) return <Figure value={value} unit={unit} />;
  const { spread, unit: sign } = setFigure({ value, unit, uncertainty: value });
  return (
    <span className="figure">
      {spread}
      <span className="unit">{sign}</span>
    </span>
  );
}
