/**
 * Code points a TrueType font has a glyph for, from its `cmap` table (OpenType 1.9, cmap format 12: Unicode full
 * repertoire; platform 3, encoding 10).
 *
 * A PDF/A must not show a missing glyph, so text is checked before it is set.
 * Throws a RangeError when the font has no such table: the report's own fonts all have one.
 */
export function coverageOf(font: Uint8Array): ReadonlySet<number> {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const table = subtable(view, offsetOf(view, 'cmap'));
  const covered = new Set<number>();
  const groups = view.getUint32(table + 12);
  for (let group = 0; group < groups; group += 1) {
    const at = table + 16 + 12 * group;
    const last = view.getUint32(at + 4);
    for (let codePoint = view.getUint32(at); codePoint <= last; codePoint += 1) covered.add(codePoint);
  }
  return covered;
}

function offsetOf(view: DataView, tag: string): number {
  const tables = view.getUint16(4);
  for (let index = 0; index < tables; index += 1) {
    const at = 12 + 16 * index;
    const name = String.fromCharCode(...[0, 1, 2, 3].map((byte) => view.getUint8(at + byte)));
    if (name === tag) return view.getUint32(at + 8);
  }
  throw new RangeError(`the font has no ${tag} table`);
}

function subtable(view: DataView, cmap: number): number {
  const count = view.getUint16(cmap + 2);
  for (let index = 0; index < count; index += 1) {
    const at = cmap + 4 + 8 * index;
    const offset = cmap + view.getUint32(at + 4);
    if (view.getUint16(at) === 3 && view.getUint16(at + 2) === 10 && view.getUint16(offset) === 12) return offset;
  }
  throw new RangeError('the font has no character map of the full Unicode repertoire');
}
