/** Remarks as sentences one after the other: each ends once, none starts in the middle of another. */
export function sentences(remarks: readonly string[]): string {
  return remarks
    .map((remark) => remark.trim())
    .filter((remark) => remark !== '')
    .map((remark) => remark.charAt(0).toUpperCase() + remark.slice(1))
    .map((remark) => (/[.!?:]$/.test(remark) ? remark : `${remark}.`))
    .join(' ');
}

/** The unit as it is printed: the record spells the micrometre with plain letters. */
export function unitWords(unit: string): string {
  return unit === 'um' ? 'µm' : unit.replace('mm2', 'mm²');
}
