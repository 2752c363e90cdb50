import type { Comparison, PieceFinding, ProductFinding, Row } from '@provinghouse/contract';
import {
  compareGroups,
  type Group,
  summarise,
  type UncertainNumber,
  type ValuedProduct,
  valueForMoney,
} from '@provinghouse/core';
import { seed } from './inference.ts';
import { rigContribution } from './measured-pull.ts';
import { figure, list } from './wording.ts';

interface Compared {
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
  readonly samples: readonly Row<'samples'>[];
}

/** Products side by side, size by size: joint limits of the differences of their means, and what each gives for its mass and price. */
export function compareProducts({ products, pieces, samples }: Compared): Comparison[] {
  const sizes = [...new Set(products.map((product) => product.nominalSize_mm))].sort((a, b) => a - b);
  return sizes.map((size) => {
    const ofSize = products.filter((product) => product.nominalSize_mm === size);
    return compareSize(size, { products: ofSize, pieces, samples });
  });
}

function compareSize(nominalSize_mm: number, { products, pieces, samples }: Compared): Comparison {
  const groups = products.map((product) => groupOf(product, pieces));
  const statistics = groups.length < 2 ? null : compareGroups({ groups, seed, unit: 'kN' });
  const pairs = products.flatMap((a, index) => products.slice(index + 1).map((b) => compareRanges(a, b)));
  const told = statistics ? [statistics.sentences.overall, statistics.sentences.alike, statistics.sentences.order] : [];
  return {
    nominalSize_mm,
    products: products.map((product) => product.product),
    sentences: [
      ...told.filter((sentence) => sentence !== ''),
      ...pairs.filter((sentence) => sentence !== null),
      ...censoredNote(products),
    ],
    statistics,
    worth: valueForMoney(
      products.map((product) => valued(product, samples)),
      { seed, ...currencyOf(products), ...sharedUncertainty(products, pieces) },
    ),
  };
}

function groupOf(product: ProductFinding, pieces: readonly PieceFinding[]): Group {
  const maxima = pieces
    .filter((piece) => piece.product === product.product)
    .flatMap((piece) => piece.pull?.maximum ?? []);
  return {
    name: product.product,
    values: maxima.filter((maximum) => !maximum.isAtLeast).map((maximum) => maximum.value),
    atLeast: maxima.filter((maximum) => maximum.isAtLeast).map((maximum) => maximum.value),
  };
}

function valued(product: ProductFinding, samples: readonly Row<'samples'>[]): ValuedProduct {
  const { mean, sd, n } = product.breakingForce;
  const mass = massOf(samples.filter((sample) => sample.product === product.product));
  const minimum = product.specification.limits.find((limit) => limit.quantity === 'breakingForce')?.lower ?? null;
  return {
    name: product.product,
    // A force of nothing is told by valueForMoney as one that is not known.
    force_kN: {
      value: mean ?? 0,
      standardUncertainty: sd === null ? 0 : sd / Math.sqrt(n),
      degreesOfFreedom: n < 2 ? null : n - 1,
    },
    ...(mass === null ? {} : { mass_kg_per_m: mass }),
    ...(product.pricePerMetre === null
      ? {}
      : { price_per_m: { value: product.pricePerMetre, standardUncertainty: 0 } }),
    ...(minimum === null ? {} : { specifiedForce_kN: minimum }),
  };
}

/** Mass per metre from two samples or more, whose scatter is all that is known of its uncertainty. */
function massOf(samples: readonly Row<'samples'>[]): UncertainNumber | null {
  const masses = samples.flatMap((sample) =>
    sample.mass_kg === null || sample.length_m === null ? [] : [sample.mass_kg / sample.length_m],
  );
  const { n, mean, sd } = summarise(masses);
  if (mean === null || sd === null) return null;
  return { value: mean, standardUncertainty: sd / Math.sqrt(n), degreesOfFreedom: n - 1 };
}

/** A single currency names the worth; products priced in several cannot be set side by side by price. */
function currencyOf(products: readonly ProductFinding[]): { readonly currency?: string } {
  const currencies = [...new Set(products.flatMap((product) => product.currency ?? []))];
  return currencies.length === 1 && currencies[0] !== undefined ? { currency: currencies[0] } : {};
}

/** What the rig may be wrong by is common to all forces: it widens every worth and changes no order. */
function sharedUncertainty(products: readonly ProductFinding[], pieces: readonly PieceFinding[]) {
  const names = new Set(products.map((product) => product.product));
  const shares = pieces
    .filter((piece) => names.has(piece.product))
    .flatMap((piece) => {
      const maximum = piece.pull?.maximum;
      const rig = maximum?.contributions.find((contribution) => contribution.name === rigContribution);
      return maximum && rig ? [rig.standardUncertainty / maximum.value] : [];
    });
  return shares.length === 0 ? {} : { sharedForceUncertainty: Math.max(...shares) };
}

function compareRanges(a: ProductFinding, b: ProductFinding): string | null {
  const [low, high] = (a.breakingForce.mean ?? 0) <= (b.breakingForce.mean ?? 0) ? [a, b] : [b, a];
  if (low.breakingForce.greatest === null || high.breakingForce.least === null) return null;
  const gap = high.breakingForce.least - low.breakingForce.greatest;
  const counts = `(${high.breakingForce.n} and ${low.breakingForce.n} pieces)`;
  return gap > 0
    ? `Every counted piece of ${high.product} held more than every counted piece of ${low.product}, by at least ${figure(gap, 2)} kN ${counts}.`
    : `The breaking forces of ${high.product} and ${low.product} overlap ${counts}: on these ranges neither can be called the stronger.`;
}

function censoredNote(products: readonly ProductFinding[]): string[] {
  const open = products.filter((product) => product.breakingForce.atLeast.length > 0);
  if (open.length === 0) return [];
  return [
    `${list(open.map((product) => product.product))} held at least as much as the counted pieces show: pulls known only as "at least" stand outside the ranges.`,
  ];
}
