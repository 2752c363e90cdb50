/** A specification as an address names it: standard, grade and size, `en-818-3~4~8`, `astm-a413~30~3/8in`. */
export interface SpecificationKey {
  readonly standard: string;
  readonly grade: string | null;
  readonly size_mm: number | null;
  /** US trade size in place of the size in mm. */
  readonly tradeSize: string | null;
}

/** The text of an address for a specification. */
export function keyText({ standard, grade, size_mm, tradeSize }: SpecificationKey): string {
  return [standard, grade ?? '', tradeSize === null ? `${size_mm ?? ''}` : `${tradeSize}in`].join('~');
}

/** Reads it again; null where it does not name a standard and a size. A decimal comma in the size counts as a point. */
export function readKey(text: string | null): SpecificationKey | null {
  const [standard = '', grade = '', size = ''] = (text ?? '').split('~').map((part) => part.trim());
  if (standard === '' || size === '') return null;
  const named = { standard, grade: grade === '' ? null : grade };
  if (/in$/i.test(size)) return { ...named, size_mm: null, tradeSize: size.slice(0, -2) };
  const size_mm = Number(size.replace(',', '.'));
  return Number.isFinite(size_mm) && size_mm > 0 ? { ...named, size_mm, tradeSize: null } : null;
}

/** What core is asked for under a key. */
export function requestFor({ standard, grade, size_mm, tradeSize }: SpecificationKey) {
  const size = tradeSize === null ? { size_mm: size_mm ?? undefined } : { tradeSize };
  return { standard, grade: grade ?? undefined, ...size };
}
