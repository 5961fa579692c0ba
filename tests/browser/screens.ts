import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import { FLAGS, findBrowser } from './find-browser';

/**
 * Pictures of pages for the eye, into `.shots/`: wide, phone, night, and as printed (A4, as PNG and
 * as PDF). Usage: node --import tsx tests/browser/screens.ts http://127.0.0.1:4310/ URL…
 */
const out = fileURLToPath(new URL('../../.shots', import.meta.url));

/** The address's path as a file name, of an id only its last four digits. */
const nameOf = (url: string): string =>
  new URL(url).pathname
    .replace(/[0-9a-f]{8}-[0-9a-f-]{23}([0-9a-f]{4})/g, '$1')
    .replace(/^\/|\/$/g, '')
    .replaceAll('/', '-') || 'season';

async function shoot(page: Page, file: string, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.screenshot({ path: join(out, file), fullPage: true });
  console.log(`.shots/${file}`);
}

async function shootAll(page: Page, url: string): Promise<void> {
  const name = nameOf(url);
  // Not until the network is idle: pages that are fetched ahead may keep it busy.
  await page.goto(url, { waitUntil: 'load' });
  await page.evaluate(async () => {
    await document.fonts.ready;
  });
  await shoot(page, `${name}-1440.png`, 1440, 900);
  await shoot(page, `${name}-390.png`, 390, 844);
  await page.emulateMedia({ colorScheme: 'dark' });
  await shoot(page, `${name}-night.png`, 1440, 900);
  await page.emulateMedia({ colorScheme: 'light', media: 'print' });
  // A4 at 96 dots to the inch.
  await shoot(page, `${name}-print.png`, 794, 1123);
  writeFileSync(join(out, `${name}.pdf`), await page.pdf({ format: 'A4', printBackground: false }));
  console.log(`.shots/${name}.pdf`);
  await page.emulateMedia({ media: null, colorScheme: null });
}

async function main(urls: readonly string[]): Promise<void> {
  if (urls.length === 0) throw new Error('Give one or more addresses of a running server.');
  mkdirSync(out, { recursive: true });
  const found = await findBrowser();
  const browser = await chromium.launch({
    executablePath: found.path,
    args: FLAGS,
    env: { ...process.env, ...found.env },
  });
  try {
    const page = await browser.newPage();
    for (const url of urls) await shootAll(page, url);
  } finally {
    await browser.close();
  }
}

await main(process.argv.slice(2));
