import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';
import type * as Server from '../../prisma/setup/server.cjs';

const { anyPort, startServer } = createRequire(import.meta.url)(
  '../../prisma/setup/server.cjs',
) as typeof Server;

/** A served build on a database of its own, a copy of the seeded one. */
export interface Site {
  readonly url: string;
}

async function withSite(provide: (site: Site) => Promise<void>): Promise<void> {
  const template = process.env.SLATE_TEST_DATABASE;
  if (template === undefined) throw new Error('Run the browser tests by: npm test -- browser');
  const folder = mkdtempSync(join(tmpdir(), 'slate-site-'));
  const database = join(folder, 'slate.db');
  for (const part of ['', '-wal']) {
    if (existsSync(template + part)) copyFileSync(template + part, database + part);
  }
  const server = await startServer({
    port: await anyPort(),
    folder: process.env.SLATE_TEST_BUILD ?? '.next-test',
    database,
    quiet: true,
  });
  if (server === 'port taken') throw new Error('The port for a test server was taken meanwhile.');
  try {
    await provide({ url: server.url });
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

interface Fixtures {
  /** Set by `test.use({ alone: true })`: each test gets a server and a database of its own. */
  readonly alone: boolean;
  /** What the page's console has said as an error, and errors that nobody caught. */
  readonly pageErrors: string[];
}

/**
 * Playwright's test against a served build: `page.goto('/')` is the season page with the demo. The
 * tests of one worker share its server and database; one that counts what is there, or changes the
 * demo, asks for `alone`.
 */
export const test = base.extend<Fixtures, { readonly site: Site }>({
  alone: [false, { option: true }],
  site: [async ({}, provide) => withSite(provide), { scope: 'worker', timeout: 90_000 }],
  baseURL: async ({ site, alone }, provide) => {
    if (alone) await withSite(({ url }) => provide(url));
    else await provide(site.url);
  },
  pageErrors: async ({ page }, provide) => {
    const errors: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await provide(errors);
  },
});

/** Fails on any violation of WCAG 2.2 A and AA that axe finds on the page. */
export async function expectAccessible(page: Page): Promise<void> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
  const found = violations.map(
    (v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`,
  );
  expect(found).toEqual([]);
}

export { expect };
