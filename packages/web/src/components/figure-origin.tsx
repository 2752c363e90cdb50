import type { ReactNode } from 'react';
import { Figure } from './figure.tsx';
import { Opens } from './opens.tsx';

interface FigureOriginProps {
  readonly name: string;
  readonly value: number | null;
  readonly unit: string;
  readonly uncertainty?: number | null;
  /** How the number is had. */
  readonly children: ReactNode;
}

/** A number that opens to its method; a dash, which opens to nothing, when there is none. */
export function FigureOrigin({ name, value, unit, uncertainty = null, children }: FigureOriginProps) {
  const figure = <Figure value={value} unit={unit} uncertainty={uncertainty} />;
  if (value === null) return figure;
  return (
    <Opens title={name} content={children}>
      {figure}
    </Opens>
  );
}
