import type { Row } from '@provinghouse/contract';
import { Figure } from '../../components/figure.tsx';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { type Expectation, massDeviation_pct, massPerMetre } from '../../lib/samples/against-claim.ts';
import { text } from '../../lib/text.ts';

const words = text.samples.against;

interface AgainstClaimProps {
  readonly product: Row<'products'> | null;
  readonly expected: Expectation;
  readonly length_m: number | null;
  readonly mass_kg: number | null;
  /** A price would tell whose it is. */
  readonly isBlind?: boolean;
}

/** Mass and price per metre beside what the claim lets expect. */
export function AgainstClaim({ product, expected, length_m, mass_kg, isBlind = false }: AgainstClaimProps) {
  const found = massPerMetre(length_m, mass_kg);
  const price = product?.price_per_metre ?? null;
  const deviation_pct = massDeviation_pct(found, expected);
  return (
    <dl className="facts against-claim">
      <div className="fact">
        <dt>{words.massPerMetre}</dt>
        <dd>
          {found === null ? <span className="soft">{words.later}</span> : <Figure value={found} unit="kg/m" />}
          {deviation_pct === null ? null : <span className="soft"> {deviationText(deviation_pct)}</span>}
        </dd>
      </div>
      <div className="fact">
        <dt>{words.expected}</dt>
        <dd>
          <Expected expected={expected} />
        </dd>
      </div>
      <div className="fact">
        <dt>{words.pricePerMetre}</dt>
        <dd>
          {price === null ? (
            <span className="soft">{isBlind ? words.priceBlind : words.laterPrice}</span>
          ) : (
            <Figure value={price} unit={`${product?.currency ?? ''}/m`} />
          )}
        </dd>
      </div>
      {price === null || found === null ? null : (
        <div className="fact">
          <dt>{words.pricePerMass}</dt>
          <dd>
            <Figure value={price / found} unit={`${product?.currency ?? ''}/kg`} />
          </dd>
        </div>
      )}
    </dl>
  );
}

function Expected({ expected }: { readonly expected: Expectation }) {
  const { massPerMetre: limit, massByShape_kg_per_m: byShape } = expected;
  if (limit !== null) return <LimitOrigin limit={limit} />;
  if (byShape === null) return <span className="soft">{words.noExpectation}</span>;
  return (
    <>
      <Figure value={byShape} unit="kg/m" /> <span className="line soft small">{words.byShape}</span>
    </>
  );
}

function deviationText(pct: number): string {
  const size = Math.abs(pct).toFixed(1);
  if (size === '0.0') return words.same;
  return pct < 0 ? words.lighter(size) : words.heavier(size);
}
