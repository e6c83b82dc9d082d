/** Turns the drawn demo pictures into PNG, as a camera would give them. Usage: npm run demo:pictures */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { launchChromium } from '../../tests/support/chromium.ts';

const folder = new URL('./photos/', import.meta.url).pathname;
const browser = await launchChromium();
const page = await browser.newPage({ viewport: { width: 640, height: 480 } });
for (const name of readdirSync(folder).filter((one) => one.endsWith('.svg'))) {
  await page.setContent(`<style>body{margin:0}</style>${readFileSync(join(folder, name), 'utf8')}`);
  writeFileSync(join(folder, name.replace(/svg$/, 'png')), await page.screenshot({ type: 'png' }));
}
await browser.close();
