import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { furnishBench } from './bench-kit.ts';
import { launchChromium } from './chromium.ts';
import { demoCampaign, serveDemo } from './demo-server.ts';
import { readFinding, screensOf } from './screens.ts';

/** Takes a picture of every screen, for the eye: node test/e2e/pictures.ts FOLDER [NAME ...] */
const [folder, ...only] = process.argv.slice(2);
if (folder === undefined) throw new Error('Name the folder the pictures go to.');
await mkdir(folder, { recursive: true });

const sizes = [
  { width: 1024, height: 768 },
  { width: 1920, height: 1080 },
];
const server = await serveDemo();
await furnishBench(server.address);
const browser = await launchChromium();
const screens = screensOf(await readFinding(server.address, demoCampaign));
for (const viewport of sizes) {
  for (const colorScheme of ['light', 'dark'] as const) {
    const page = await browser.newPage({ viewport, colorScheme });
    for (const { name, path } of screens) {
      if (only.length > 0 && !only.includes(name)) continue;
      await page.goto(`${server.address}${path}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.waitForLoadState('networkidle');
      await page.screenshot({ path: join(folder, `${name}-${viewport.width}-${colorScheme}.png`), fullPage: true });
    }
    await page.close();
  }
}
await browser.close();
await server.close();
