import { quantityNames } from '@provinghouse/core';
import { Link } from 'wouter';
import { ChoiceBlank } from '../../components/blank.tsx';
import { Figure } from '../../components/figure.tsx';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { SpecificationChoice } from '../../components/specification-choice.tsx';
import { hrefs } from '../../lib/route.ts';
import { keyText, readKey } from '../../lib/specification-key.ts';
import { text } from '../../lib/text.ts';
import type { ChainValues } from './chain-values.ts';
import { type ChainAtHand, isQuantity } from './sheet.ts';

interface ChainFieldsProps {
  readonly chain: ChainAtHand | null;
  readonly values: ChainValues | null;
  readonly onChain: (chain: ChainAtHand | null) => void;
}

const words = text.reckoner;

/** The choice of the chain whose numbers fill the fields. */
export function ChainFields({ chain, values, onChain }: ChainFieldsProps) {
  const requirement = chain?.requirement ?? 'breakingForce';
  return (
    <>
      <div className="blanks">
        <SpecificationChoice
          chosen={readKey(chain?.key ?? null)}
          onChoose={(key) => onChain(key === null ? null : { key: keyText(key), requirement })}
        />
        {chain === null ? null : (
          <ChoiceBlank
            label={words.requirement}
            value={requirement}
            options={Object.entries(quantityNames)}
            onChoose={(quantity) => {
              if (isQuantity(quantity)) onChain({ ...chain, requirement: quantity });
            }}
          />
        )}
      </div>
      {values === null || chain === null ? null : <Given chain={chain} values={values} />}
    </>
  );
}

function Given({ chain, values }: { readonly chain: ChainAtHand; readonly values: ChainValues }) {
  const { specification, limit, fault } = values;
  if (specification === null) {
    return (
      <p className="form-fault">
        {words.chainFault}: {fault}
      </p>
    );
  }
  const given: Readonly<Record<string, string>> = words.given;
  const numbers = Object.entries(values.values).filter(([key]) => key !== 'lowerLimit' && key !== 'upperLimit');
  return (
    <dl className="chain-given">
      {numbers.map(([key, value]) => (
        <div key={key}>
          <dt>{given[key] ?? key}</dt>
          <dd>{key === 'grade' ? value : <Figure value={value} unit={key.endsWith('_mm') ? 'mm' : 'kN'} />}</dd>
        </div>
      ))}
      <div>
        <dt>{words.inQuestion(quantityNames[chain.requirement])}</dt>
        <dd>{limit === null ? <span className="soft">{text.limit.none}</span> : <LimitOrigin limit={limit} />}</dd>
      </div>
      <div>
        <dt>{words.itsPage}</dt>
        <dd>
          <Link href={hrefs.specification(chain.key)}>{specification.title}</Link>
        </dd>
      </div>
    </dl>
  );
}
