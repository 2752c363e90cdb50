import type { CampaignFinding } from '@provinghouse/contract';
import type { Citation, Limit, Provenance, Specification } from '@provinghouse/core';
import { joined, literal, type Typst } from '../typst/escape.ts';

/** The citations of a report, numbered in the order in which the requirements name them. */
export interface NumberedCitations {
  readonly list: readonly Citation[];
  readonly numberOf: ReadonlyMap<string, number>;
}

/** Specifications in the order of the products, each once. */
export function specificationsOf(finding: CampaignFinding): readonly Specification[] {
  return [...new Map(finding.products.map((product) => [product.specification.title, product.specification])).values()];
}

export function numberCitations(finding: CampaignFinding): NumberedCitations {
  const all = specificationsOf(finding).flatMap((specification) =>
    specification.limits.flatMap((limit) => limit.provenance.citations),
  );
  const list = [...new Map(all.map((citation) => [citation.id, citation])).values()];
  return { list, numberOf: new Map(list.map((citation, index) => [citation.id, index + 1])) };
}

/** The marks of doubt on a limit, boxed, in words. */
export function flags(provenance: Provenance): Typst[] {
  return provenance.flags.map((flag) => `flag(${literal(flag)})`);
}

/** Where a limit comes from: place, citation numbers, whether a second page agrees, marks of doubt. */
export function sourceOf(limit: Limit, citations: NumberedCitations): Typst {
  const numbers = limit.provenance.citations.flatMap((citation) => citations.numberOf.get(citation.id) ?? []);
  const parts = [literal(limit.place), ...numbers.map((number) => `" "; cited(${number})`)];
  const marks = flags(limit.provenance).map((mark) => `h(4pt); ${mark}`);
  return joined([...parts, ...marks]);
}

/** Other values published for the same limit, and remarks: words for the line below the table; null for none. */
export function remarkOn(limit: Limit): string | null {
  const others = limit.provenance.alternatives.map(
    (other) => `another page gives ${other.value} ${limit.unit} (${other.citation})`,
  );
  const remarks = [...others, ...(limit.provenance.note === null ? [] : [limit.provenance.note])];
  return remarks.length === 0 ? null : remarks.join('; ');
}
