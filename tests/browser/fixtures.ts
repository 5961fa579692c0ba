import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { SHARED_CREATOR_ID } from '../../lib/store/creators';
import type * as DoorStart from '../../prisma/setup/door.cjs';
import type * as Server from '../../prisma/setup/server.cjs';
import { withLivePages } from './live-pages';
import { openDoor, type Door } from './phone-door';

const load = createRequire(import.meta.url);
const { anyPort, startServer } = load('../../prisma/setup/server.cjs') as typeof Server;
const { doorKey } = load('../../prisma/setup/door.cjs') as typeof DoorStart;

/** A served build on a database of its own, a copy of the seeded one. */
export interface Site {
  readonly url: string;
  /** The phone's door before it, where it was asked for. */
  readonly door: Door | null;
}

async function withSite(
  provide: (site: Site) => Promise<void>,
  { empty = false, phone = false } = {},
): Promise<void> {
  const template = process.env.SLATE_TEST_DATABASE;
  if (template === undefined) throw new Error('Run the browser tests by: npm test -- browser');
  const folder = mkdtempSync(join(tmpdir(), 'slate-site-'));
  const database = join(folder, 'slate.db');
  for (const part of ['', '-wal']) {
    if (existsSync(template + part)) copyFileSync(template + part, database + part);
  }
  if (empty) takeOutDemo(database);
  const key = doorKey(join(folder, 'phone'));
  const port = await anyPort();
  const server = await startServer({
    port,
    folder: process.env.SLATE_TEST_BUILD ?? '.next-test',
    database,
    quiet: true,
    ...(phone ? { door: key } : {}),
  });
  if (server === 'port taken') throw new Error('The port for a test server was taken meanwhile.');
  try {
    const door = phone ? await openDoor(key, port, await anyPort()) : null;
    try {
      await provide({ url: server.url, door });
    } finally {
      await door?.stop();
    }
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Leaves the published tables alone, as before the first episode: no kitchen, no pantry, no demo. */
function takeOutDemo(database: string): void {
  const db = new Database(database);
  try {
    db.pragma('foreign_keys = OFF');
    const tables = db
      .prepare<[], { name: string }>(
        `SELECT DISTINCT m.name FROM sqlite_schema m, pragma_table_info(m.name) c
         WHERE m.type = 'table' AND c.name = 'creatorId'`,
      )
      .all();
    for (const { name } of tables) {
      db.prepare(`DELETE FROM "${name}" WHERE creatorId <> ?`).run(SHARED_CREATOR_ID);
    }
  } finally {
    db.close();
  }
}

interface Fixtures {
  /** Pages come back from `goto` and `reload` when they answer; not where scripts are off. */
  readonly live: void;
  /** Set by `test.use({ alone: true })`: each test gets a server and a database of its own. */
  readonly alone: boolean;
  /** Set by `test.use({ phone: true })`: alone, and with the phone's door open as by `npm start -- --phone`. */
  readonly phone: boolean;
  /** Where this test's pages come from. */
  readonly served: Site;
  /** The phone's door; only with `phone`. */
  readonly door: Door;
  /** Set by `test.use({ empty: true })`: as `alone`, without the demo or anything else of a person. */
  readonly empty: boolean;
  /** Another machine: a server without anything of a person, beside this test's own. */
  readonly elsewhere: Site;
  /** What the page's console has said as an error, and errors that nobody caught. */
  readonly pageErrors: string[];
}

/**
 * Playwright's test against a served build: `page.goto('/')` is the season page with the demo. The
 * tests of one worker share its server and database; one that counts what is there, or changes the
 * demo, asks for `alone`; one of the phone's way in asks for `phone`.
 */
export const test = base.extend<Fixtures, { readonly site: Site }>({
  live: [
    async ({ browser, javaScriptEnabled }, provide) => {
      if (javaScriptEnabled === false) await provide();
      else await withLivePages(browser, provide);
    },
    { auto: true },
  ],
  alone: [false, { option: true }],
  empty: [false, { option: true }],
  site: [async ({}, provide) => withSite(provide), { scope: 'worker', timeout: 90_000 }],
  phone: [false, { option: true }],
  served: [
    async ({ site, alone, empty, phone }, provide) => {
      if (alone || empty || phone) await withSite(provide, { empty, phone });
      else await provide(site);
    },
    // A server that starts from a cold disk is not the test's own time.
    { timeout: 120_000 },
  ],
  baseURL: async ({ served }, provide) => provide(served.url),
  elsewhere: [async ({}, provide) => withSite(provide, { empty: true }), { timeout: 120_000 }],
  door: async ({ served }, provide) => {
    if (served.door === null) throw new Error('Say test.use({ phone: true }) to have a door.');
    await provide(served.door);
  },
  pageErrors: async ({ page }, provide) => {
    const errors: string[] = [];
    page.on('console', (message) => {
      // What did not load is named in the place of the message alone.
      if (message.type() === 'error') errors.push(`${message.text()} ${message.location().url}`);
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await provide(errors);
  },
});

const STANDARD = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Fails on any violation of WCAG 2.2 A and AA that axe finds on the page. Every rule runs on every element; only what
 * passes is not described in detail, which takes longer than the rules do. Our pages have no frames of other origins,
 * which is all that the "legacy" way leaves out.
 *
 * What sticks to the edge of the screen is looked at in its own place: there it would cover half of a control just as
 * far as somebody happens to have scrolled, and a scroll uncovers it.
 */
export async function expectAccessible(page: Page): Promise<void> {
  await stick(page, 'static');
  const { violations, passes } = await new AxeBuilder({ page })
    .options({ runOnly: STANDARD, resultTypes: ['violations'] })
    .setLegacyMode(true)
    .analyze();
  await stick(page, '');
  const found = violations.map(
    (v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`,
  );
  expect(found).toEqual([]);
  // Rules that found something to look at: without any, axe has not looked.
  expect(passes.length).toBeGreaterThan(5);
}

async function stick(page: Page, position: 'static' | ''): Promise<void> {
  await page.evaluate((place) => {
    for (const element of document.querySelectorAll<HTMLElement>('.sticky, [class*=":sticky"]')) {
      element.style.position = place;
    }
  }, position);
}

export { expect };
