import type { CampaignFinding, PieceFinding, ProductFinding, ProductJudgement } from '@provinghouse/contract';
import { type Judgement, type Limit, type Quantity, quantityNames } from '@provinghouse/core';
import { type AddressCodec, queryPart } from '../../lib/use-address-state.ts';

/** What of the findings is shown, and set out how. An empty filter hides nothing. */
export interface View {
  readonly by: 'product' | 'requirement';
  readonly product: string;
  readonly requirement: string;
  readonly verdict: string;
  readonly words: string;
}

const filters = ['product', 'requirement', 'verdict', 'words'] as const;

export const viewCodec: AddressCodec<View> = {
  read: (search) => {
    const query = new URLSearchParams(search);
    const of = (name: string) => query.get(name) ?? '';
    return {
      by: of('by') === 'requirement' ? 'requirement' : 'product',
      product: of('product'),
      requirement: of('requirement'),
      verdict: of('verdict'),
      words: of('words'),
    };
  },
  write: (view) =>
    [
      ...(view.by === 'requirement' ? [queryPart('by', view.by)] : []),
      ...filters.flatMap((name) => (view[name] === '' ? [] : [queryPart(name, view[name])])),
    ].join('&'),
};

export function isFiltered(view: View): boolean {
  return filters.some((name) => view[name] !== '');
}

/** One piece held against one requirement. */
export interface JudgedValue {
  readonly product: ProductFinding;
  readonly piece: PieceFinding;
  readonly judgement: Judgement;
}

/** One requirement of one product, with the values held against it that are shown. */
export interface RequirementGroup {
  readonly key: string;
  readonly product: ProductFinding;
  readonly limit: Limit;
  /** Over all pieces of the product, whatever is shown of them. */
  readonly judgement: ProductJudgement | undefined;
  readonly values: readonly JudgedValue[];
}

export interface Shown {
  readonly products: readonly ProductFinding[];
  readonly groups: readonly RequirementGroup[];
  readonly values: number;
  readonly allValues: number;
}

/** What the view leaves of the findings. A group without values is shown as long as no filter asks for one. */
export function shownOf(finding: CampaignFinding, view: View): Shown {
  const all = finding.products.flatMap((product) => groupsOf(product, finding.pieces));
  const asksForValues = view.verdict !== '' || view.words.trim() !== '';
  const words = view.words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const groups = all
    .filter(({ product, limit }) => isAsked(view.product, product.product) && isAsked(view.requirement, limit.quantity))
    .map((group) => ({
      ...group,
      values: group.values.filter((value) => isAsked(view.verdict, value.judgement.verdict) && holds(value, words)),
    }))
    .filter((group) => !asksForValues || group.values.length > 0);
  return {
    products: finding.products.filter(({ product }) => isAsked(view.product, product)),
    groups,
    values: countOf(groups),
    allValues: countOf(all),
  };
}

/** The requirements there are, in the order of the specifications. */
export function requirementsOf(finding: CampaignFinding): readonly Quantity[] {
  const groups = finding.products.flatMap((product) => groupsOf(product, finding.pieces));
  return [...new Set(groups.map(({ limit }) => limit.quantity))];
}

function groupsOf(product: ProductFinding, pieces: readonly PieceFinding[]): RequirementGroup[] {
  const values = pieces
    .filter((piece) => piece.product === product.product)
    .flatMap((piece) => piece.judgements.map((judgement) => ({ product, piece, judgement })));
  const byLimit = Map.groupBy(values, ({ judgement }) => keyOf(judgement.limit));
  const asked = product.specification.limits.filter((limit) => limit.quantity !== 'workingLoadLimit');
  const judged = new Set(values.map(({ judgement }) => judgement.limit.quantity));
  const limits = [
    ...[...byLimit.values()].flatMap(([first]) => first?.judgement.limit ?? []),
    ...asked.filter((limit) => !judged.has(limit.quantity)),
  ];
  return limits.map((limit) => ({
    key: `${product.product} ${keyOf(limit)}`,
    product,
    limit,
    judgement: product.judgements.find((one) => one.quantity === limit.quantity),
    values: byLimit.get(keyOf(limit)) ?? [],
  }));
}

function keyOf(limit: Limit): string {
  return `${limit.quantity} ${limit.statement}`;
}

function isAsked(asked: string, is: string): boolean {
  return asked === '' || asked === is;
}

function holds({ product, piece, judgement }: JudgedValue, words: readonly string[]): boolean {
  if (words.length === 0) return true;
  const { limit, verdict, reason } = judgement;
  const all = [
    product.product,
    product.supplier,
    piece.piece,
    quantityNames[limit.quantity],
    limit.statement,
    verdict,
    reason,
  ];
  const text = all.join(' ').toLowerCase();
  return words.every((word) => text.includes(word));
}

function countOf(groups: readonly RequirementGroup[]): number {
  return groups.reduce((sum, group) => sum + group.values.length, 0);
}

/** The anchor of a part that a name tells from its like; what an address cannot hold plainly becomes a dash. */
export function partId(kind: 'product' | 'requirement' | 'size', name: string): string {
  return `${kind}-${name.replaceAll(/[^\w.-]+/g, '-')}`;
}
