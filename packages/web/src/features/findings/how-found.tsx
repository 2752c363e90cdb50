import type { ReactNode } from 'react';
import { Figure } from '../../components/figure.tsx';
import { Opens } from '../../components/opens.tsx';
import { text } from '../../lib/text.ts';
import { asSentence } from './as-sentence.ts';

/** How a number came about. */
export interface HowFound {
  readonly sentence?: string;
  /** What it is made of. */
  readonly inputs: ReactNode;
  /** Formula or method with its source. */
  readonly method: string;
  /** How well it is known. */
  readonly sure: ReactNode;
  readonly doubts?: readonly string[];
  /** Where more of it stands. */
  readonly more?: ReactNode;
}

interface FoundProps {
  readonly title: string;
  readonly how: HowFound;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** Something found, opening to what it is made of, by which method, and how sure it is. */
export function Found({ title, how, wide = false, children }: FoundProps) {
  return (
    <Opens title={title} wide={wide} content={<How how={how} />}>
      {children}
    </Opens>
  );
}

/** A number of pieces, opening to them. */
export function FoundCount({ title, inputs, children }: Omit<FoundProps, 'how'> & Pick<HowFound, 'inputs'>) {
  const { count: method, exact: sure } = text.findings.how;
  return (
    <Found title={title} how={{ inputs, method, sure }}>
      {children}
    </Found>
  );
}

interface FoundFigureProps extends Omit<FoundProps, 'children'> {
  readonly value: number | null;
  readonly unit: string;
  readonly uncertainty?: number | null;
}

/** A number that opens; a dash, which opens to nothing, where there is none. */
export function FoundFigure({ value, unit, uncertainty = null, ...found }: FoundFigureProps) {
  const figure = <Figure value={value} unit={unit} uncertainty={uncertainty} />;
  return value === null ? figure : <Found {...found}>{figure}</Found>;
}

function How({ how }: { readonly how: HowFound }) {
  const { inputs, method, uncertainty, doubts } = text.findings.how;
  const lines = [
    [inputs, how.inputs],
    [method, how.method],
    [uncertainty, how.sure],
  ] as const;
  return (
    <>
      {how.sentence === undefined ? null : <p>{how.sentence}</p>}
      <dl className="how-found">
        {lines.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
        {how.doubts === undefined || how.doubts.length === 0 ? null : (
          <div>
            <dt>{doubts}</dt>
            {how.doubts.map((doubt) => (
              <dd key={doubt}>{asSentence(doubt)}</dd>
            ))}
          </div>
        )}
      </dl>
      {how.more}
    </>
  );
}
