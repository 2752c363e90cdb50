import { InputError } from '@provinghouse/core';
import encodeQR from 'qr';

/** Quiet zone round the symbol, modules (ISO/IEC 18004:2024, 9.1: four for QR Code). */
export const quietZone = 4;

/** Below this a telephone held by hand does not surely tell modules apart, mm (common practice: a third of a millimetre). */
const leastModule_mm = 1 / 3;

/**
 * A QR Code (ISO/IEC 18004) of a text, error correction M (about 15 % of the symbol may be lost), as an SVG of one black path
 * with its quiet zone: one square of the drawing to each module, no seams between them.
 *
 * @param side_mm printed side, quiet zone included
 * @throws InputError `report/label-too-long` where the modules would be too small for a phone
 */
export function qrSvg(text: string, side_mm: number): string {
  // Capacity at level M ends at 2331 bytes (version 40): far beyond what a label can show.
  const modules =
    Buffer.byteLength(text) > 1000 ? null : encodeQR(text, 'raw', { ecc: 'medium', border: quietZone, scale: 1 });
  if (modules === null || side_mm / modules.length < leastModule_mm) {
    throw new InputError(
      'report/label-too-long',
      `"${text.slice(0, 80)}" is too long for a code that a phone can read off this label; shorten the code of the piece or the address, or take the larger label.`,
      { text, side_mm },
    );
  }
  const side = modules.length;
  const path = modules.flatMap((row, y) =>
    runs(row).map(({ from, to }) => `M${from} ${y}h${to - from}v1h${from - to}z`),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${side} ${side}"><path d="${path.join('')}" fill="#000"/></svg>`;
}

/** Runs of black modules of a row. */
function runs(row: readonly boolean[]): { readonly from: number; readonly to: number }[] {
  const found: { from: number; to: number }[] = [];
  row.forEach((isBlack, x) => {
    if (!isBlack) return;
    const last = found.at(-1);
    if (last?.to === x) last.to = x + 1;
    else found.push({ from: x, to: x + 1 });
  });
  return found;
}
