import type { CampaignFinding, Comparison, ProductFinding } from '@provinghouse/contract';
import type { WorthTable } from '@provinghouse/core';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { productsOf } from './comparison-section.tsx';
import { type FoundCell, type FoundColumn, FoundTable } from './found-table.tsx';
import { Found, FoundFigure, type HowFound } from './how-found.tsx';
import { Counted } from './inference-table.tsx';
import { chancePercent } from './percent.ts';
import { massHow, priceHow } from './product-how.tsx';
import { sizeText } from './size-text.ts';
import { meanSure } from './summary-how.tsx';

const { how, valueHead: head } = text.findings;

interface ValueTableProps {
  readonly finding: CampaignFinding;
  readonly comparison: Comparison;
  /** Products left by the filter. */
  readonly shown: readonly ProductFinding[];
}

/** What a metre weighs and costs, and how much force that buys: each figure opens to its limits. */
export function ValueTable({ finding, comparison, shown }: ValueTableProps) {
  const all = productsOf(comparison, finding);
  const products = all.filter((product) => shown.includes(product));
  return (
    <FoundTable
      title={text.findings.valueOf(sizeText(all))}
      file={`${finding.campaign.campaign}-${comparison.nominalSize_mm}-mm-value`}
      className="summary"
      columns={columns}
      groups={[
        {
          key: 'value',
          rows: products.map((product) => ({ key: product.product, cells: cellsOf(product, { finding, comparison }) })),
        },
      ]}
    />
  );
}

const columns: readonly FoundColumn[] = [
  { heading: head.product, keys: ['product'] },
  { heading: head.margin, keys: ['above_minimum_pct'], isNumber: true },
  { heading: head.mass, keys: ['mass_kg_per_m'], isNumber: true },
  { heading: head.perMass, keys: ['force_for_mass_kN_m_per_kg'], isNumber: true },
  { heading: head.bestMass, keys: ['best_for_mass'], isNumber: true },
  { heading: head.price, keys: ['price_per_m', 'currency'], isNumber: true },
  { heading: head.perPrice, keys: ['force_for_price_kN_m'], isNumber: true },
  { heading: head.bestPrice, keys: ['best_for_price'], isNumber: true },
];

interface ValuedIn {
  readonly finding: CampaignFinding;
  readonly comparison: Comparison;
}

function cellsOf(product: ProductFinding, { finding, comparison }: ValuedIn): FoundCell[] {
  const { product: name, pricePerMetre, massPerMetre_kg_per_m, forcePerMass_kN_m_per_kg, forcePerPrice_kN_m } = product;
  const { worth } = comparison;
  const currency = product.currency ?? '';
  const force = <Counted code={finding.campaign.campaign} product={product} pieces={finding.pieces} />;
  const of = (heading: string, table: WorthTable, method: string): { title: string; how: HowFound } => ({
    title: `${name}, ${heading}`,
    how: worthHow({ product, table, method, inputs: force }),
  });
  return [
    { shown: name, values: [name] },
    {
      shown: (
        <FoundFigure {...of(head.margin, worth.margin, how.margin)} value={product.marginOverMinimum_pct} unit="%" />
      ),
      values: [product.marginOverMinimum_pct],
    },
    {
      shown: (
        <FoundFigure
          title={`${name}, ${head.mass}`}
          value={massPerMetre_kg_per_m}
          unit="kg/m"
          how={massHow(finding, product)}
        />
      ),
      values: [massPerMetre_kg_per_m],
    },
    {
      shown: (
        <FoundFigure
          {...of(head.perMass, worth.forcePerMass, how.perMass)}
          value={forcePerMass_kN_m_per_kg}
          unit="kN m/kg"
        />
      ),
      values: [forcePerMass_kN_m_per_kg],
    },
    bestCell(`${name}, ${head.bestMass}`, name, worth.forcePerMass),
    {
      shown: (
        <FoundFigure title={`${name}, ${head.price}`} value={pricePerMetre} unit={`${currency}/m`} how={priceHow()} />
      ),
      values: [pricePerMetre, product.currency],
    },
    {
      shown: (
        <FoundFigure
          {...of(head.perPrice, worth.forcePerPrice, how.perPrice)}
          value={forcePerPrice_kN_m}
          unit={`kN m per ${currency}`}
        />
      ),
      values: [forcePerPrice_kN_m],
    },
    bestCell(`${name}, ${head.bestPrice}`, name, worth.forcePerPrice),
  ];
}

interface WorthAsked {
  readonly product: ProductFinding;
  readonly table: WorthTable;
  readonly method: string;
  readonly inputs: HowFound['inputs'];
}

/** What the worth of a product is with its limits, how it was had, and what to doubt. */
function worthHow({ product, table, method, inputs }: WorthAsked): HowFound {
  const found = table.worths.find((worth) => worth.name === product.product);
  return {
    ...(found === undefined ? {} : { sentence: found.sentence }),
    inputs: (
      <>
        {inputs}
        <span className="line">
          {[
            product.massPerMetre_kg_per_m === null
              ? null
              : figureText({ value: product.massPerMetre_kg_per_m, unit: 'kg/m' }),
            product.pricePerMetre === null
              ? null
              : figureText({ value: product.pricePerMetre, unit: `${product.currency ?? ''}/m` }),
          ]
            .filter((one) => one !== null)
            .join('; ')}
        </span>
      </>
    ),
    method: `${method} ${table.method}.`,
    sure:
      found?.lower == null || found.upper === null
        ? meanSure(product, 'breakingForce')
        : how.intervalIs(text.limit.between(plain(found.lower), `${plain(found.upper)} ${found.unit}`), '95\u00a0%'),
    doubts: found?.doubts ?? [],
  };
}

function plain(value: number): string {
  return value.toPrecision(4).replace('-', '\u2212');
}

function bestCell(title: string, name: string, { order, worths }: WorthTable): FoundCell {
  const place = order.ranked.find((one) => one.name === name);
  if (place === undefined) return { shown: text.none, values: [null] };
  return {
    shown: (
      <Found
        title={title}
        how={{
          sentence: order.sentence,
          inputs: how.worths(worths.map((worth) => worth.name)),
          method: `${how.bestWorth(order.draws)} ${order.method}.`,
          sure: how.bestSure(order.simulationError.toPrecision(1)),
          doubts: order.doubts,
        }}
      >
        {chancePercent(place.best)}
      </Found>
    ),
    values: [place.best],
  };
}
