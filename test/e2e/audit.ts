import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** Violations of WCAG 2.2 A and AA and of axe's own good practice, each with the place it was found. */
export function violations(page: Page): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  return found(new AxeBuilder({ page }).withTags(tags));
}

/** Those of the rules that look at colours. */
export function colourViolations(page: Page): Promise<string[]> {
  return found(new AxeBuilder({ page }).withRules(['color-contrast', 'link-in-text-block']));
}

async function found(audit: AxeBuilder): Promise<string[]> {
  const { violations: rules } = await audit.analyze();
  return rules.flatMap((rule) =>
    rule.nodes.map((node) => `${rule.id}: ${node.target.join(' ')} (${node.failureSummary ?? ''})`),
  );
}
