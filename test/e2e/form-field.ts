import type { Locator, Page } from 'playwright-core';

/** The control of a form under its label, in a sheet laid over the page where one is open. */
export function field(at: Page | Locator, label: string): Locator {
  const exact = new RegExp(`^${label.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
  // What a shell holds is looked for from the shell on, whatever it stands in.
  const page = 'page' in at ? at.page() : at;
  const shell = at.locator('.form-field').filter({ has: page.locator('label').filter({ hasText: exact }) });
  return shell.locator('input, textarea, select').first();
}

/** Types into several fields, each under its label. */
export async function fillIn(at: Page | Locator, typed: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(typed)) {
    const control = field(at, label);
    const isChoice = (await control.evaluate((element) => element.tagName)) === 'SELECT';
    if (isChoice) await control.selectOption(value);
    else await control.fill(value);
  }
}
