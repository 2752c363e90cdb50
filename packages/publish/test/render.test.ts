import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { renderReport, reportSource } from '../src/index.ts';
import { fixture } from './fixture.ts';

const whole = fixture({ products: 2, pieces: 5, isInferred: true });

/** A program of poppler-utils run on a PDF; null where it is not installed. */
function poppler(program: string, pdf: Uint8Array, ...options: readonly string[]): string | null {
  const folder = mkdtempSync(join(tmpdir(), 'report-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, pdf);
    return execFileSync(program, [...options, file, ...(program === 'pdftotext' ? ['-'] : [])], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function matchesGolden(name: string, text: string): void {
  const file = new URL(`./golden/${name}`, import.meta.url);
  const changed = new URL(`./golden/${name}-changed`, import.meta.url);
  if (existsSync(file) && readFileSync(file, 'utf8') === text) return;
  writeFileSync(changed, text);
  assert.fail(`${name} is not what it was: compare it with ${name}-changed, and take that over if it is better`);
}

describe('a report', () => {
  const report = renderReport(whole);
  const text = poppler('pdftotext', report.pdf, '-raw');

  test('has the source it had', () => {
    matchesGolden('report.typ', report.source);
  });

  test('has the words it had', { skip: text === null ? 'pdftotext is not installed' : false }, () => {
    // Blanks are the reader's guess, not the report's words.
    matchesGolden(
      'report.txt',
      (text ?? '')
        .replaceAll('\u200b', '')
        .replaceAll(/[ \t]+/g, ' ')
        .replaceAll(/ ?\n ?/g, '\n'),
    );
  });

  test('is the same to the byte when it is rendered again', () => {
    const again = renderReport(fixture({ products: 2, pieces: 5, isInferred: true }));
    assert.equal(again.source, report.source);
    assert.equal(Buffer.compare(again.pdf, report.pdf), 0);
  });

  test('says in its metadata that it is PDF/A-2b, made on the day of issue', () => {
    const bytes = Buffer.from(report.pdf).toString('latin1');
    assert.match(bytes, /<pdfaid:part>2<\/pdfaid:part>/);
    assert.match(bytes, /<pdfaid:conformance>B<\/pdfaid:conformance>/);
    assert.match(bytes, /<xmp:CreateDate>2026-04-01T00:00:00Z?/);
  });

  test('carries its fonts inside, and no others than its own', () => {
    const list = poppler('pdffonts', report.pdf);
    if (list === null) return assert.match(Buffer.from(report.pdf).toString('latin1'), /FontFile2/);
    const fonts = list.trim().split('\n').slice(2);
    assert.ok(fonts.length >= 2);
    for (const font of fonts) {
      assert.match(font, /^[A-Z]{6}\+SourceSans3-(Regular|Italic|SemiBold)\b/);
      assert.match(font, /\byes yes yes\b/);
    }
  });

  test('shows marking, identity and page number on every page, and its end', { skip: text === null }, () => {
    const pages = (text ?? '').split('\f').slice(0, -1);
    assert.equal(pages.length, report.pages);
    pages.forEach((page, index) => {
      assert.match(page, /INVENTED DEMONSTRATION DATA/);
      assert.match(page, /Report FIXTURE-1 \/ 0123456789ab/);
      assert.match(page, new RegExp(`page ${index + 1} of ${pages.length}\\b`));
    });
    assert.match(pages.at(-1) ?? '', /End of report/);
  });

  test('says plainly that it is not signed', { skip: text === null }, () => {
    assert.match(text ?? '', /This report is not signed/);
  });

  test('names the cure when the day of issue is none', () => {
    for (const issuedOn of ['', '2026-02-30', '1 April', '2026-4-1']) {
      assert.throws(() => reportSource({ ...whole, issuedOn }), { code: 'report/issue-date' });
    }
  });
});

describe('a campaign', () => {
  const shapes = [
    { law: 'without products', products: 0, pieces: 0 },
    { law: 'without pieces', products: 2, pieces: 0 },
    { law: 'without pulls', products: 2, pieces: 3, isPulled: false },
    { law: 'without gauging', products: 2, pieces: 3, isGauged: false },
    { law: 'of one piece', products: 1, pieces: 1 },
    { law: 'of thirteen products of five pieces', products: 13, pieces: 5 },
    { law: 'of seven pieces of one product', products: 1, pieces: 7 },
  ];
  for (const { law, ...shape } of shapes) {
    test(`${law} has a report`, () => {
      assert.ok(renderReport(fixture(shape)).pages >= 3);
    });
  }

  test('of hostile words has a report that shows them', () => {
    const words = '"]#panic("x")[*bold* _it_ $x^2$ \\ // 中 <label> @ref = head #import "a": *';
    const { finding } = fixture({ products: 1, pieces: 1 });
    const campaign = {
      ...finding.campaign,
      title: words,
      question: words,
      client: words,
      method: words,
      marking: words,
    };
    const { pdf } = renderReport({ ...whole, finding: { ...finding, campaign, answers: [words], doubts: [words] } });
    const text = poppler('pdftotext', pdf, '-raw');
    if (text === null) return;
    const plain = text.replaceAll('\u200b', '').replaceAll(/\s+/g, '');
    assert.ok(plain.split(words.replace('中', '[U+4E2D]').replaceAll(' ', '')).length - 1 >= 6);
  });

  test('without marking shows none', () => {
    const { finding } = whole;
    const unmarked = { ...whole, finding: { ...finding, campaign: { ...finding.campaign, marking: null } } };
    assert.match(reportSource(unmarked), /marking: none,/);
  });
});
