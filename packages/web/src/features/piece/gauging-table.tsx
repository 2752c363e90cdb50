import type { PieceFinding } from '@provinghouse/contract';
import type { GaugingReading, QuantityGauging } from '@provinghouse/core';
import { standingOf } from '@provinghouse/core';
import { Figure, Spread } from '../../components/figure.tsx';
import { FigureOrigin } from '../../components/figure-origin.tsx';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { uncertaintyText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { GaugingReadings } from './gauging-readings.tsx';

/** Gauging against the limits, quantity by quantity, then the steel area it comes to, then every reading. */
export function GaugingTable({ piece }: { readonly piece: PieceFinding }) {
  const { gauging } = piece;
  if (gauging === null) return <p className="soft">{text.piece.notGauged}</p>;
  return (
    <>
      <div className="pad-scroll">
        <table className="leaf">
          <GaugingHead />
          <tbody>
            {gauging.quantities.map((quantity) => (
              <GaugingRow key={quantity.quantity} quantity={quantity} piece={piece} />
            ))}
          </tbody>
        </table>
      </div>
      <SteelArea gauging={gauging} />
      <GaugingReadings readings={piece.gaugingReadings} />
    </>
  );
}

function GaugingHead() {
  const { gaugingHead: head } = text.piece;
  return (
    <thead>
      <tr>
        <th scope="col">{head.quantity}</th>
        {[head.readings, head.least, head.mean, head.greatest, head.sd].map((name) => (
          <th key={name} scope="col" className="num">
            {name}
          </th>
        ))}
        <th scope="col">{head.limit}</th>
        <th scope="col">{head.verdict}</th>
      </tr>
    </thead>
  );
}

function GaugingRow({ quantity, piece }: { readonly quantity: QuantityGauging; readonly piece: PieceFinding }) {
  const judgements = piece.judgements.filter((one) => one.limit.quantity === quantity.quantity);
  return (
    <tr>
      <th scope="row">{text.gaugingQuantity[quantity.quantity]}</th>
      <td className="num">{quantity.readings}</td>
      <td className="num">
        <Figure value={quantity.least_mm} unit="mm" />
      </td>
      <td className="num">
        <GaugedMean quantity={quantity} />
      </td>
      <td className="num">
        <Figure value={quantity.greatest_mm} unit="mm" />
      </td>
      <td className="num">
        <Spread value={quantity.sd_mm} unit="mm" />
      </td>
      <td>
        {judgements.map((one) => (
          <LimitOrigin key={one.limit.statement} limit={one.limit} />
        ))}
      </td>
      <td>
        {judgements.length === 0 ? '' : <VerdictMark verdict={standingOf(judgements.map((one) => one.verdict))} />}
      </td>
    </tr>
  );
}

function GaugedMean({ quantity }: { readonly quantity: QuantityGauging }) {
  const u = quantity.standardUncertainty_mm;
  const overZinc = quantity.quantity === 'diameter' || quantity.quantity === 'weldDiameter';
  return (
    <FigureOrigin name={text.gaugingQuantity[quantity.quantity]} value={quantity.mean_mm} unit="mm">
      <p>{text.method.gauged(quantity.readings, u === null ? null : uncertaintyText(u, 'mm'))}</p>
      {overZinc ? <p>{text.method.zincOff}</p> : null}
    </FigureOrigin>
  );
}

function SteelArea({ gauging }: { readonly gauging: GaugingReading }) {
  const facts = [
    [text.piece.area, gauging.steelArea_mm2, gauging.steelAreaUncertainty_mm2, 'mm2', text.method.area],
    [text.piece.leastArea, gauging.leastSteelArea_mm2, null, 'mm2', text.method.leastArea],
    [text.piece.nominalArea, gauging.nominalArea_mm2, null, 'mm2', text.method.nominalArea],
    [text.piece.outOfRound, gauging.outOfRound_mm, null, 'mm', text.method.outOfRound],
  ] as const;
  return (
    <>
      <dl className="facts gauging-facts">
        {facts.map(([name, value, uncertainty, unit, method]) => (
          <div key={name} className="fact">
            <dt>{name}</dt>
            <dd>
              <FigureOrigin name={name} value={value} unit={unit} uncertainty={uncertainty}>
                <p>{method}</p>
              </FigureOrigin>
            </dd>
          </div>
        ))}
      </dl>
      {gauging.notes.map((note) => (
        <p key={note} className="soft">
          {note}
        </p>
      ))}
    </>
  );
}
