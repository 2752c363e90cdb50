/** One reading of one link: what is asked for next, or was read. */
export interface SurveyPlace {
  readonly link: number;
  readonly reading: number;
}

interface Taken extends SurveyPlace {
  readonly thickness_um: number | null;
}

export interface SurveyPlan {
  /** Links to be read, in the order in which they are. */
  readonly links: readonly number[];
  readonly readingsPerLink: number;
}

/** The next reading by the plan: link by link, each until it has its readings of thickness; null when all have. */
export function nextPlace(plan: SurveyPlan, taken: readonly Taken[]): SurveyPlace | null {
  const link = plan.links.find((one) => readingsOf(one, taken) < plan.readingsPerLink);
  return link === undefined ? null : placeOn(link, taken);
}

/** The place of one more reading on a link: the lowest number that is free. Readings after the pull have numbers too. */
export function placeOn(link: number, taken: readonly Taken[]): SurveyPlace {
  const numbers = new Set(taken.filter((one) => one.link === link).map((one) => one.reading));
  let reading = 1;
  while (numbers.has(reading)) reading += 1;
  return { link, reading };
}

/** How many readings of thickness a link has. */
export function readingsOf(link: number, taken: readonly Taken[]): number {
  return taken.filter((one) => one.link === link && one.thickness_um !== null).length;
}

/** The link before or after one, as far as the piece goes. */
export function neighbourLink(link: number, step: 1 | -1, links: number): number {
  return Math.min(links, Math.max(1, link + step));
}

export type LinksTyped = { readonly links: readonly number[] } | { readonly fault: string };

/** Reads which links are to be surveyed: `2`, `1-3, 5`; nothing typed means all of them. */
export function readLinks(typed: string, count: number): LinksTyped {
  const all = Array.from({ length: count }, (_, at) => at + 1);
  const parts = typed
    .split(/[,; ]+/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) return { links: all };
  const links = new Set<number>();
  for (const part of parts) {
    const [, from, to] = /^(\d+)(?:[-–](\d+))?$/.exec(part) ?? [];
    const [first, last] = [Number(from), Number(to ?? from)];
    if (from === undefined || first < 1 || last > count || first > last)
      return { fault: `holds “${part}”; this piece has links 1 to ${count}, written like 2, or 1-3, 5` };
    for (let link = first; link <= last; link += 1) links.add(link);
  }
  return { links: [...links].sort((a, b) => a - b) };
}
