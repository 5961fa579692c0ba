import type { Page } from '@playwright/test';

/** The demo's filming day in its kitchen: 12 December in Copenhagen, an hour before UTC. */
const atClock = (time: string): number => Date.parse(`2026-12-12T${time}:00+01:00`);

/**
 * Lets a page believe that it is another time, which goes on from there, also over a reload. Only what asks for the
 * present is changed: the test tool's own clock puts another Date in place, in which zones of time are lost.
 */
export async function setClock(page: Page, time: string): Promise<void> {
  await page.addInitScript(
    (aheadMs) => {
      const ahead = () => Number(sessionStorage.getItem('ahead') ?? aheadMs);
      const now = Date.now.bind(Date);
      Date.now = () => now() + ahead();
      globalThis.Date = new Proxy(Date, {
        construct: (date, given: unknown[], as: typeof Date) =>
          Reflect.construct(date, given.length === 0 ? [now() + ahead()] : given, as) as Date,
      });
    },
    atClock(time) - Date.now(),
  );
}

/** Lets so many minutes pass at once, after those that passed before. */
export async function pass(page: Page, minutes: number): Promise<void> {
  await page.evaluate((ms) => {
    const real = performance.timeOrigin + performance.now();
    sessionStorage.setItem('ahead', String(Math.round(Date.now() - real) + ms));
  }, minutes * 60_000);
}
