import type { PlannedNumber } from '@provinghouse/contract';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { Opens } from '../../components/opens.tsx';
import { unitSign } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { inputText, plannedFigure, unbroken } from './planned-text.ts';

interface PlannedProps {
  readonly name: string;
  readonly planned: PlannedNumber;
  /** Stands where there is no number; its reason opens. */
  readonly none?: string;
}

/** A number of the plan that opens to its sentence, method and inputs. */
export function Planned({ name, planned, none = text.brief.noValue }: PlannedProps) {
  return (
    <Opens title={name} wide content={<Method planned={planned} />}>
      {planned.value === null ? (
        <span className="soft">{none}</span>
      ) : (
        <PlannedFigure value={planned.value} unit={planned.unit} />
      )}
    </Opens>
  );
}

function PlannedFigure({ value, unit }: { readonly value: number; readonly unit: string }) {
  const set = plannedFigure(value, unit);
  return (
    <span className="figure">
      {set.bound}
      {set.value}
      {set.unit === '' ? null : <span className="unit">{set.unit}</span>}
    </span>
  );
}

function Method({ planned }: { readonly planned: PlannedNumber }) {
  const { inputHead: head } = text.brief;
  return (
    <>
      <p>{unbroken(planned.sentence)}</p>
      <p className="soft">{planned.method}.</p>
      {planned.inputs.length === 0 ? null : (
        <table>
          <caption className="for-ears">{text.brief.inputs}</caption>
          <ColumnHeads names={[head.name, head.value, head.source]} />
          <tbody>
            {planned.inputs.map((input) => (
              <tr key={input.name}>
                <th scope="row">{input.name}</th>
                <td className="figure">{inputText(input.value, unitSign(input.unit))}</td>
                <td>{input.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
