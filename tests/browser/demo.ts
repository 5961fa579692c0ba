import { expect, type Page } from '@playwright/test';

/** The address of the demo's page, as the season page leads to it. */
export async function demo(page: Page): Promise<string> {
  await page.goto('/');
  const link = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  const href = await link.getAttribute('href');
  if (href === null) throw new Error('the season does not lead to the demo');
  return href;
}

/** Opens the demo's page. */
export async function openDemo(page: Page): Promise<void> {
  await page.goto(await demo(page));
  await expect(page.getByRole('heading', { level: 1 })).toContainText('One oven, three dishes');
}
