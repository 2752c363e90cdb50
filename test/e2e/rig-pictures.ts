import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { launchChromium } from './chromium.ts';
import { fillChecklist, practiceRig, servePracticeBench } from './practice-bench.ts';

/** Takes pictures of a practice pull on the screen of its rig, for the eye: node test/e2e/rig-pictures.ts FOLDER */
const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('Name the folder the pictures go to.');
await mkdir(folder, { recursive: true });

const sizes = [
  { name: 'wall', width: 1920, height: 1080 },
  { name: 'phone', width: 390, height: 844 },
];
const browser = await launchChromium();
for (const colorScheme of ['light', 'dark'] as const) {
  for (const { name, ...viewport } of sizes) {
    const bench = await servePracticeBench(8);
    const page = await browser.newPage({ viewport, colorScheme });
    const take = (moment: string) =>
      page.screenshot({
        path: join(folder, `rig-${moment}-${name}-${colorScheme}.png`),
        fullPage: moment === 'before',
      });
    await page.goto(`${bench.address}/rig/${practiceRig}`);
    await fillChecklist(page, 'PRACTICE-8-2');
    await take('before');
    await page.getByRole('button', { name: 'Arm the rig' }).click();
    await page.getByRole('button', { name: 'Start' }).waitFor();
    await page.waitForTimeout(400);
    await take('armed');
    await page.keyboard.press('Space');
    await page.locator('.stage-near').waitFor({ timeout: 60_000 });
    await page.keyboard.press('m');
    await page.waitForTimeout(900);
    await take('running');
    await page.keyboard.press('Escape');
    await page.waitForTimeout(100);
    await take('asked');
    await page.getByText('Parted.').waitFor({ timeout: 60_000 });
    await page.waitForTimeout(200);
    await take('ended');
    await page.close();
    await bench.close();
  }
}
await browser.close();
