import { defineConfig } from '@playwright/test';
import { FLAGS, findBrowser } from './find-browser';

const browser = await findBrowser();

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  outputDir: '../../test-results',
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  workers: 2,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [['list'], ...(process.env.PLAYWRIGHT_JSON_OUTPUT_FILE ? [['json'] as const] : [])],
  use: {
    browserName: 'chromium',
    locale: 'en-US',
    timezoneId: 'UTC',
    screenshot: 'only-on-failure',
    // Without a picture of the page before and after each action: of a page with thousands of elements that takes
    // longer than the action. `--trace on` takes them.
    trace: { mode: 'retain-on-failure', snapshots: false, screenshots: false },
    launchOptions: {
      executablePath: browser.path,
      args: FLAGS,
      env: { ...process.env, ...browser.env },
    },
  },
});
