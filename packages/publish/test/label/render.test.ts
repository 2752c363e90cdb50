import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import fc from 'fast-check';
import jsQr from 'jsqr';
import encodeQR from 'qr';
import { type LabelDocument, labelText, type PieceLabel, renderLabels, sheetMeasures } from '../../src/index.ts';
import { labelSource } from '../../src/label/source.ts';
import { cropped, type GreyPicture, greyPage, poppler } from '../poppler.ts';

const dpi = 300;
const perMillimetre = dpi / 25.4;

function piece(code: string, rest: Partial<PieceLabel> = {}): PieceLabel {
  return { piece: code, links: 5, nominalSize_mm: 8, ...rest };
}

function run(rest: Partial<LabelDocument> = {}): LabelDocument {
  return {
    campaign: 'SALLOW-REACH',
    labels: ['ASH-8-1', 'B7', 'DAMSON-10-12', 'A-LONG-CODE-OF-A-LABORATORY-3', 'K/4 ü'].map((code) => piece(code)),
    sheet: 'single-62x29',
    origin: null,
    printedOn: '2026-03-09',
    ...rest,
  };
}

/** The text of the one QR Code in a picture, by a reader that shares nothing with the writer. */
function scanned({ width, height, pixels }: GreyPicture): string | null {
  const rgba = new Uint8ClampedArray(4 * pixels.length);
  for (const [at, grey] of pixels.entries()) rgba.set([grey, grey, grey, 255], 4 * at);
  // The package is CommonJS: its function is the default member of what it exports.
  const read = (jsQr as unknown as { default?: typeof jsQr.default }).default ?? jsQr;
  return (read as typeof jsQr.default)(rgba, width, height)?.data ?? null;
}

/** The label at a place of an A4 sheet. */
function labelAt(page: GreyPicture, at: number): GreyPicture {
  const { label, columns, top } = sheetMeasures['a4-3x8'];
  return cropped(page, {
    x: Math.round((at % columns) * label.width * perMillimetre),
    y: Math.round((top + Math.floor(at / columns) * label.height) * perMillimetre),
    width: Math.floor(label.width * perMillimetre),
    height: Math.floor(label.height * perMillimetre),
  });
}

const isPopplerMissing = greyPage(renderLabels(run({ labels: [piece('A')] })).pdf, { page: 1, dpi: 72 }) === null;
const skip = isPopplerMissing ? 'pdftoppm is not installed' : false;

describe('a label', () => {
  test('scanned off the paper gives the code that is printed beside it', { skip }, () => {
    const document = run();
    const { pdf, pages } = renderLabels(document);
    assert.equal(pages, document.labels.length);
    document.labels.forEach((label, index) => {
      const page = greyPage(pdf, { page: index + 1, dpi });
      assert.ok(page);
      assert.equal(scanned(page), label.piece);
      const printed = poppler('pdftotext', pdf, '-f', `${index + 1}`, '-l', `${index + 1}`)?.toString();
      // The reader of text takes a hyphen at the end of a line for a divided word.
      const bare = (text: string) => text.replaceAll(/[\s-]/g, '');
      assert.ok(bare(printed ?? '').startsWith(bare(label.piece)), printed);
    });
  });

  test('on a sheet stands in its own place, with the address of its piece', { skip }, () => {
    const labels = Array.from({ length: 24 }, (_, index) => piece(`ASH-8-${index}`));
    const origin = 'http://192.168.1.20:8080';
    const { pdf, pages } = renderLabels(run({ labels, sheet: 'a4-3x8', origin, used: 2, withCuttingMarks: true }));
    assert.equal(pages, 2);
    const sheets = [1, 2].map((page) => greyPage(pdf, { page, dpi }));
    labels.forEach((label, index) => {
      const sheet = sheets[Math.floor((index + 2) / 24)];
      assert.ok(sheet);
      const text = scanned(labelAt(sheet, (index + 2) % 24));
      assert.equal(text, labelText({ origin, campaign: 'SALLOW-REACH', piece: label.piece }));
      assert.equal(new URL(text ?? '').pathname, `/c/SALLOW-REACH/p/${label.piece}`);
    });
    for (const empty of [0, 1]) assert.ok(sheets[0] && scanned(labelAt(sheets[0], empty)) === null);
  });

  test('has every module of its code as a clean square, and a quiet zone of four', { skip }, () => {
    const { code, inset, label } = sheetMeasures['single-62x29'];
    const page = greyPage(renderLabels(run({ labels: [piece('ASH-8-1')] })).pdf, { page: 1, dpi: 600 });
    assert.ok(page);
    const modules = encodeQR('ASH-8-1', 'raw', { ecc: 'medium', border: 4, scale: 1 });
    const module_px = ((code / modules.length) * 600) / 25.4;
    const top_px = (((label.height - code) / 2) * 600) / 25.4;
    modules.forEach((row, y) => {
      row.forEach((isBlack, x) => {
        for (const [dx, dy] of [
          [0.2, 0.2],
          [0.5, 0.5],
          [0.8, 0.2],
          [0.2, 0.8],
          [0.8, 0.8],
        ] as const) {
          const px = Math.floor((inset * 600) / 25.4 + (x + dx) * module_px);
          const py = Math.floor(top_px + (y + dy) * module_px);
          const grey = page.pixels[py * page.width + px] ?? Number.NaN;
          assert.ok(isBlack ? grey < 64 : grey > 192, `module ${x}, ${y}: ${grey}`);
        }
      });
    });
  });

  test('prints nothing that the document does not hold: a blind one has code, campaign and the phone code alone', {
    skip,
  }, () => {
    const { pdf } = renderLabels(run({ labels: [piece('K4Q', { links: null, nominalSize_mm: null })] }));
    const words = poppler('pdftotext', pdf)
      ?.toString()
      .split(/\s+/)
      .filter((word) => word !== '');
    assert.deepEqual(words, ['K4Q', 'SALLOW-REACH']);
    const open = poppler('pdftotext', renderLabels(run({ labels: [piece('ASH-8-1')] })).pdf)?.toString();
    assert.match(open ?? '', /5 links/);
    assert.match(open ?? '', /8 mm/);
  });

  test('cuts nothing off, however long its codes may be', { skip }, () => {
    for (const sheet of ['a4-3x8', 'single-62x29'] as const) {
      for (const code of ['W'.repeat(64), 'A1B2C3D4'.repeat(8), 'MM-'.repeat(21)]) {
        const { pdf } = renderLabels(run({ sheet, campaign: code, labels: [piece(code)] }));
        const page = greyPage(pdf, { page: 1, dpi });
        assert.ok(page);
        const { label, top } = sheetMeasures[sheet];
        const isWhite = (y: number) => {
          const from = Math.round((top + y) * perMillimetre) * page.width;
          return page.pixels.subarray(from, from + Math.floor(label.width * perMillimetre)).every((grey) => grey > 200);
        };
        assert.ok(isWhite(0.6) && isWhite(label.height - 0.6), `${sheet} ${code}: printed up to the edge`);
        const right = Math.floor((label.width - 0.3) * perMillimetre);
        for (let y = 0; y < Math.floor(label.height * perMillimetre); y += 1) {
          const grey = page.pixels[(Math.round(top * perMillimetre) + y) * page.width + right] ?? 0;
          assert.ok(grey > 200, `${sheet} ${code}: printed up to the right edge`);
        }
      }
    }
  });

  test('is read with a smear of a tenth of its side on it', { skip }, () => {
    const page = greyPage(renderLabels(run({ labels: [piece('ASH-8-1')] })).pdf, { page: 1, dpi });
    assert.ok(page);
    const { code, inset, label } = sheetMeasures['single-62x29'];
    const side = 0.1 * code * perMillimetre;
    const [x, y] = [(inset + 0.72 * code) * perMillimetre, ((label.height - code) / 2 + 0.72 * code) * perMillimetre];
    for (let row = 0; row < side; row += 1)
      page.pixels.fill(
        0,
        Math.round(y + row) * page.width + Math.round(x),
        Math.round(y + row) * page.width + Math.round(x + side),
      );
    assert.equal(scanned(page), 'ASH-8-1');
  });
});

test('the same labels are the same bytes', () => {
  assert.equal(Buffer.compare(renderLabels(run()).pdf, renderLabels(run()).pdf), 0);
});

test('a code can never act as markup, and the source shows it as it is', () => {
  const nasty = fc.string({ unit: fc.constantFrom(...'\\"#$*_`<>@=-+/[]{}()a0 '), minLength: 1, maxLength: 20 });
  fc.assert(
    fc.property(nasty, (code) => {
      const { pages } = renderLabels(run({ labels: [piece(code)] }));
      assert.equal(pages, 1);
    }),
    { seed: 7, numRuns: 10 },
  );
});

test('the address of a piece keeps signs that addresses give a meaning', () => {
  fc.assert(
    fc.property(
      fc
        .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
        .filter((text) => text.isWellFormed() && !/^\.{1,2}$/.test(text)),
      (code) => {
        const url = new URL(labelText({ origin: 'http://bench:8080/', campaign: 'C', piece: code }));
        assert.equal(decodeURIComponent(url.pathname.replace('/c/C/p/', '')), code);
      },
    ),
    { seed: 7, numRuns: 200, examples: [['a/b'], ['a?b#c'], ['100 %']] },
  );
});

test('what cannot be printed is refused with its cure', () => {
  const refused = (rest: Partial<LabelDocument>, code: string) =>
    assert.throws(
      () => labelSource(run(rest)),
      (error) => isInputError(error) && error.code === code,
    );
  refused({ labels: [] }, 'report/label-none');
  refused({ used: 1 }, 'report/label-used');
  refused({ sheet: 'a4-3x8', used: 24 }, 'report/label-used');
  refused({ origin: 'bench' }, 'report/label-origin');
  refused({ origin: 'ftp://bench' }, 'report/label-origin');
  refused({ origin: 'http://bench/record' }, 'report/label-origin');
  refused({ labels: [piece('A'.repeat(65))] }, 'report/label-too-long');
  refused({ labels: [piece('ü'.repeat(64))], origin: `http://${'long.'.repeat(30)}example` }, 'report/label-too-long');
  refused({ printedOn: '2026-02-30' }, 'report/issue-date');
});
