import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { GaugingBench } from './gauging-bench.ts';

/** Counts every key by what it is, and every press of a pointer, from the first moment of each page. */
const counter = () => {
  const counts = { digits: 0, enter: 0, other: 0, pointer: 0 };
  Reflect.set(window, 'counts', counts);
  const waits: { piece: string; ms: number }[] = [];
  Reflect.set(window, 'waits', waits);
  const nameOf = () => document.querySelector('.gauging-field label')?.textContent ?? '';
  window.addEventListener(
    'keydown',
    ({ key, isTrusted }) => {
      if (!isTrusted) return;
      if (/^[0-9.,]$/.test(key)) counts.digits += 1;
      else if (key === 'Enter') counts.enter += 1;
      else counts.other += 1;
      if (key !== 'Enter') return;
      const [start, before] = [performance.now(), nameOf()];
      const observer = new MutationObserver(() => {
        const isReady = nameOf() !== before && document.activeElement?.classList.contains('gauging-box');
        if (!isReady) return;
        observer.disconnect();
        waits.push({ piece: nameOf().split(',')[1] ?? '', ms: performance.now() - start });
      });
      observer.observe(document.body, { subtree: true, childList: true, characterData: true });
    },
    true,
  );
  for (const kind of ['pointerdown', 'mousedown', 'touchstart'])
    window.addEventListener(
      kind,
      () => {
        counts.pointer += 1;
      },
      true,
    );
};

export interface SatDown {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly faults: string[];
}

interface Choices {
  readonly instrument?: string;
  readonly colorScheme?: 'light' | 'dark';
}

/** A browser of its own in which somebody is at the bench, with an instrument in hand. */
export async function sitDown(
  { browser, bench }: { readonly browser: Browser; readonly bench: Pick<GaugingBench, 'address'> },
  path: string,
  { instrument = 'CAL-1', colorScheme = 'light' }: Choices = {},
): Promise<SatDown> {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, colorScheme });
  await context.addInitScript((chosen) => {
    localStorage.setItem('provinghouse-person', 'wren');
    localStorage.setItem('provinghouse-remembered length instrument', chosen);
  }, instrument);
  await context.addInitScript(counter);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  await page.goto(`${bench.address}${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { context, page, faults };
}

/** Everything that was entered in this browser is in the ledger. */
export const allKept = (page: Page) => page.locator('.kept-done').waitFor({ timeout: 60_000 });
/** The place at hand, in the words of the page. */
export const placeAsked = async (page: Page) => (await page.locator('.gauging-place').textContent()) ?? '';
