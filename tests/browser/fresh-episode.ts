import type { Page } from '@playwright/test';

/**
 * Begins an episode by the form of the season page, and leaves the page at it. Every test that
 * changes an episode makes its own. Returns its path.
 */
export async function freshEpisode(page: Page, title: string): Promise<string> {
  await page.goto('/');
  await page.getByText('Begin an episode with its title').click();
  await page.getByRole('textbox', { name: 'Title', exact: true }).fill(title);
  await page.getByRole('button', { name: 'Begin the episode' }).click();
  await page.waitForURL(/\/episodes\/[0-9a-f-]{36}$/);
  return new URL(page.url()).pathname;
}
