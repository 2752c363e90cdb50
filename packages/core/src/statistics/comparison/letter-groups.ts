/** The letters of one item: items that share a letter are not distinguishable. */
export interface Lettered {
  readonly name: string;
  readonly letters: string;
}

/**
 * Compact letters: two items share a letter exactly when they are not told apart (Piepho 2004, Journal of Computational
 * and Graphical Statistics 13, 456-466, insert and absorb). Give the names in the order they are shown, the first gets "a".
 *
 * @param distinct whether two names are told apart; symmetric
 */
export function letterGroups(
  names: readonly string[],
  distinct: (first: string, second: string) => boolean,
): Lettered[] {
  let sets: readonly (readonly number[])[] = names.length > 0 ? [names.map((_, index) => index)] : [];
  names.forEach((first, i) => {
    names.slice(i + 1).forEach((second, distance) => {
      if (distinct(first, second)) sets = absorbed(sets.flatMap((set) => parted(set, i, i + 1 + distance)));
    });
  });
  const ordered = [...sets].sort(byMembers);
  return names.map((name, index) => ({
    name,
    letters: ordered.flatMap((set, place) => (set.includes(index) ? [letter(place)] : [])).join(''),
  }));
}

/** A set that holds both is replaced by one without the first and one without the second. */
function parted(set: readonly number[], first: number, second: number): (readonly number[])[] {
  if (!set.includes(first) || !set.includes(second)) return [set];
  return [set.filter((member) => member !== second), set.filter((member) => member !== first)];
}

/** Drops every set that lies wholly inside another. */
function absorbed(sets: readonly (readonly number[])[]): (readonly number[])[] {
  return sets.filter(
    (set, index) =>
      !sets.some((other, place) => {
        if (place === index || other.length < set.length || !set.every((member) => other.includes(member)))
          return false;
        return other.length > set.length || place < index;
      }),
  );
}

function byMembers(a: readonly number[], b: readonly number[]): number {
  const place = a.findIndex((member, index) => member !== b[index]);
  if (place < 0) return a.length - b.length;
  return (a[place] ?? 0) - (b[place] ?? Number.POSITIVE_INFINITY);
}

/** a ... z, then a2 ... z2, and so on. */
function letter(place: number): string {
  const round = Math.floor(place / 26);
  return String.fromCharCode(97 + (place % 26)) + (round === 0 ? '' : `${round + 1}`);
}
