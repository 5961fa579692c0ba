import type { Page } from '@playwright/test';
import type { EpisodeFile } from '#lib/episode/schema';

/** Brings an episode in by the form of the season page, and leaves the page at it. Returns its path. */
export async function bringIn(page: Page, file: EpisodeFile): Promise<string> {
  await page.goto('/');
  await page.getByText('Bring in an episode file').click();
  await page.getByLabel('Episode file').setInputFiles({
    name: 'episode.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(file)),
  });
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await page.waitForURL(/\/episodes\/[0-9a-f-]{36}$/);
  return new URL(page.url()).pathname;
}
