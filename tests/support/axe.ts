import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Rules of WCAG 2.2 A and AA and of good practice that the page breaks, with the first place of each. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async (runOnly) => {
    const axe = Reflect.get(globalThis, 'axe') as {
      run(root: Document, options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
    };
    const { violations } = await axe.run(document, { runOnly });
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
  }, tags);
}
