import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium, type Browser } from '@playwright/test';
import type * as Build from '../../prisma/setup/build.cjs';
import type * as Prepared from '../../prisma/setup/database.cjs';
import type * as Server from '../../prisma/setup/server.cjs';
import { FLAGS, findBrowser } from '../browser/find-browser';

const require = createRequire(import.meta.url);
const { build } = require('../../prisma/setup/build.cjs') as typeof Build;
const { prepareDatabase } = require('../../prisma/setup/database.cjs') as typeof Prepared;
const { anyPort, startServer } = require('../../prisma/setup/server.cjs') as typeof Server;

/** What the heaviest page may load in scripts, compressed, in kB of 1000 bytes. */
const MOST_KB = 200;
/** A good layout shift as web.dev/articles/cls names it [M]. */
const MOST_SHIFT = 0.1;
const FOLDER = process.env.SLATE_BUILD_DIR ?? '.next-test';

interface Measured {
  readonly page: string;
  readonly scripts: number;
  readonly kB: number;
  readonly wide: number;
  readonly phone: number;
}

/**
 * Per page of the production build, in a fresh browser with nothing cached: the compressed bytes of all scripts
 * that it loads, and how far its layout shifts on a wide screen and on a phone. Fails where a page is over.
 */
export async function run(): Promise<void> {
  if (!existsSync(join(FOLDER, 'BUILD_ID'))) await build(FOLDER);
  const folder = mkdtempSync(join(tmpdir(), 'slate-pages-'));
  const database = join(folder, 'slate.db');
  const given = process.env.SLATE_TEST_DATABASE;
  if (given === undefined) await prepareDatabase(database);
  else copyFileSync(given, database);
  const server = await startServer({
    port: await anyPort(),
    folder: FOLDER,
    database,
    quiet: true,
  });
  if (server === 'port taken') throw new Error('The port was taken meanwhile.');
  const found = await findBrowser();
  const browser = await chromium.launch({
    executablePath: found.path,
    args: FLAGS,
    env: { ...process.env, ...found.env },
  });
  try {
    const rows: Measured[] = [];
    for (const path of await paths(server.url)) rows.push(await measure(browser, server.url, path));
    report(rows);
  } finally {
    await browser.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function paths(url: string): Promise<readonly string[]> {
  const season = await (await fetch(url)).text();
  const episode = /\/episodes\/[0-9a-f-]{36}/.exec(season)?.[0];
  if (episode === undefined) throw new Error('The season does not lead to the demo.');
  const food = '/pantry/foods/014f8634-0400-7000-8000-000000005665';
  const parts = ['', '/numbers', '/day', '/day/live', '/shopping', '/edit', '/publish'];
  return [
    '/',
    ...parts.map((part) => episode + part),
    '/pantry?q=barley',
    '/pantry/foods/new',
    food,
    '/kitchen',
    '/phones',
    '/changes',
    '/look',
    '/no-such-page',
  ];
}

async function measure(browser: Browser, url: string, path: string): Promise<Measured> {
  const wide = await visit(browser, url + path, 1440);
  const phone = await visit(browser, url + path, 390);
  const page = path.replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, '…');
  return {
    page,
    scripts: wide.scripts,
    kB: wide.bytes / 1000,
    wide: wide.shift,
    phone: phone.shift,
  };
}

/** One visit with nothing cached. The bytes are those of gzip at its usual level, whoever sent them how. */
async function visit(browser: Browser, url: string, width: number) {
  const context = await browser.newContext({ viewport: { width, height: 900 } });
  try {
    const page = await context.newPage();
    await page.addInitScript(() => {
      const shifts: number[] = [];
      Object.assign(window, { shifts });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) {
          const shift = entry as PerformanceEntry & { value: number; hadRecentInput: boolean };
          if (!shift.hadRecentInput) shifts.push(shift.value);
        }
      }).observe({ type: 'layout-shift', buffered: true });
    });
    const sizes: Promise<number>[] = [];
    page.on('response', (response) => {
      if (response.request().resourceType() !== 'script') return;
      sizes.push(response.body().then((body) => gzipSync(body).length));
    });
    const answer = await page.goto(url, { waitUntil: 'load' });
    if (answer === null || answer.status() >= 500) throw new Error(`${url} could not be shown`);
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    // Long enough for what is put in after the first picture.
    await page.waitForTimeout(700);
    const shift = await page.evaluate(() =>
      (window as unknown as { shifts: number[] }).shifts.reduce((sum, each) => sum + each, 0),
    );
    const each = await Promise.all(sizes);
    return { shift, scripts: each.length, bytes: each.reduce((sum, size) => sum + size, 0) };
  } finally {
    await context.close();
  }
}

function report(rows: readonly Measured[]): void {
  console.table(
    Object.fromEntries(
      rows.map(({ page, scripts, kB, wide, phone }) => [
        page,
        {
          scripts,
          'kB, gzip': kB.toFixed(1),
          'shift, 1440 px': wide.toFixed(3),
          'shift, 390 px': phone.toFixed(3),
        },
      ]),
    ),
  );
  const over = rows.filter(
    ({ kB, wide, phone }) => kB >= MOST_KB || Math.max(wide, phone) > MOST_SHIFT,
  );
  const heaviest = Math.max(...rows.map(({ kB }) => kB));
  console.info(`heaviest: ${heaviest.toFixed(1)} kB of ${MOST_KB}; pages over: ${over.length}`);
  if (over.length > 0) process.exitCode = 1;
}
