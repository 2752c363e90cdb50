import { readFileSync } from 'node:fs';

/** One published, remembered or computed check, as kept in `reference/`. */
export interface ReferenceCheck {
  readonly id: string;
  readonly title?: string;
  readonly kind?: string;
  readonly source: string | { readonly citation: string };
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance?: number;
}

function load(file: string): unknown {
  return JSON.parse(readFileSync(new URL(`./reference/${file}`, import.meta.url), 'utf8'));
}

export const statisticsChecks = load('stats-checks.json') as readonly ReferenceCheck[]; // shape told in reference/README.md
export const coatingChecks = (load('coating-checks.json') as { readonly checks: readonly ReferenceCheck[] }).checks;

export function check(checks: readonly ReferenceCheck[], id: string): ReferenceCheck {
  const found = checks.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`no reference check ${id}`);
  return found;
}

export function citation(reference: ReferenceCheck): string {
  return typeof reference.source === 'string' ? reference.source : reference.source.citation;
}
