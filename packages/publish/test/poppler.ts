import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What a program of poppler-utils prints of a PDF; null where it is not installed. */
export function poppler(program: string, pdf: Uint8Array, ...options: readonly string[]): Buffer | null {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  try {
    const file = join(folder, 'paper.pdf');
    writeFileSync(file, pdf);
    return execFileSync(program, [...options, file, ...(program === 'pdftotext' ? ['-'] : [])], {
      stdio: ['ignore', 'pipe', 'ignore'],
      maxBuffer: 2 ** 28,
    });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A picture in shades of grey, 0 black to 255 white, row by row. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** A page as a printer would see it; null where pdftoppm is not installed. */
export function greyPage(
  pdf: Uint8Array,
  { page, dpi }: { readonly page: number; readonly dpi: number },
): GreyPicture | null {
  const bytes = poppler('pdftoppm', pdf, '-r', `${dpi}`, '-gray', '-f', `${page}`, '-l', `${page}`);
  if (bytes === null) return null;
  // PGM: "P5 width height 255" and one byte a pixel.
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (header === null) throw new Error('not a PGM picture');
  return { width: Number(header[1]), height: Number(header[2]), pixels: bytes.subarray(header[0].length) };
}

/** Part of a picture, in pixels. */
export function cropped(
  picture: GreyPicture,
  part: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): GreyPicture {
  const pixels = new Uint8Array(part.width * part.height);
  for (let row = 0; row < part.height; row += 1) {
    const from = (part.y + row) * picture.width + part.x;
    pixels.set(picture.pixels.subarray(from, from + part.width), row * part.width);
  }
  return { width: part.width, height: part.height, pixels };
}
