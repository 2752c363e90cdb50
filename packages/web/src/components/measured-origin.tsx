import type { MeasuredValue } from '@provinghouse/core';
import { uncertaintyText } from '../lib/figure.ts';
import { text } from '../lib/text.ts';
import { Measured } from './figure.tsx';
import { Opens } from './opens.tsx';

/** A measured value that opens to its origin, its budget of uncertainty and the sources of both. */
export function MeasuredOrigin({ measured, name }: { readonly measured: MeasuredValue; readonly name: string }) {
  return (
    <Opens title={name} wide={measured.contributions.length > 0} content={<Origin measured={measured} />}>
      <Measured measured={measured} />
    </Opens>
  );
}

function Origin({ measured }: { readonly measured: MeasuredValue }) {
  const { expandedUncertainty, coverageFactor, unit } = measured;
  return (
    <>
      <p>{sentence(measured.origin)}</p>
      {measured.isAtLeast ? <p>{text.origin.atLeast}</p> : null}
      <p>
        {expandedUncertainty === null
          ? text.origin.noUncertainty
          : text.origin.uncertainty(uncertaintyText(expandedUncertainty, unit), String(coverageFactor))}
      </p>
      <Budget measured={measured} />
    </>
  );
}

function Budget({ measured }: { readonly measured: MeasuredValue }) {
  if (measured.contributions.length === 0) return null;
  return (
    <table>
      <caption className="for-ears">{text.origin.contributions}</caption>
      <thead>
        <tr>
          <th scope="col">{text.origin.part}</th>
          <th scope="col">{text.origin.standard}</th>
          <th scope="col">{text.origin.source}</th>
        </tr>
      </thead>
      <tbody>
        {measured.contributions.map((part) => (
          <tr key={part.name}>
            <th scope="row">{part.name}</th>
            <td>{uncertaintyText(part.standardUncertainty, measured.unit)}</td>
            <td>{part.source}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The record writes origins as phrases; on their own they stand as a sentence. */
function sentence(phrase: string): string {
  return `${phrase.charAt(0).toUpperCase()}${phrase.slice(1)}${phrase.endsWith('.') ? '' : '.'}`;
}
