import type { Browser, Page } from '@playwright/test';

/**
 * A person reads a page before pressing a key on it; a test does not, and what it presses before the page's script has
 * taken over the server's HTML is lost. So `goto` and `reload` of every page that `during` opens come back only when the
 * page answers.
 */
export async function withLivePages(browser: Browser, during: () => Promise<void>): Promise<void> {
  const { newContext } = browser;
  browser.newContext = async (options) => {
    const context = await newContext.call(browser, options);
    context.on('page', answerWhenLive);
    return context;
  };
  try {
    await during();
  } finally {
    browser.newContext = newContext;
  }
}

function answerWhenLive(page: Page): void {
  const goto = page.goto.bind(page);
  const reload = page.reload.bind(page);
  page.goto = async (url, options) => {
    const response = await goto(url, options);
    await untilLive(page);
    return response;
  };
  page.reload = async (options) => {
    const response = await reload(options);
    await untilLive(page);
    return response;
  };
}

/** A page without scripts of ours (a download, a certificate, a plain answer) is as live as it gets. */
async function untilLive(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      // React's own marks, since nothing else says that its listeners hear: the document it has taken over, and on each
      // element the properties it was given.
      interface Container {
        stateNode: { current: { memoizedState: { isDehydrated?: boolean } | null } };
      }
      const mark = (element: object, prefix: string): unknown =>
        Object.entries(element).find(([key]) => key.startsWith(prefix))?.[1];
      if (document.querySelector('script[src*="/_next/"]') === null) return true;
      const container = mark(document, '__reactContainer$') as Container | undefined;
      const state = container?.stateNode.current.memoizedState;
      if (!state || state.isDehydrated !== false) return false;
      const touched = 'button, input:not([type=hidden]), select, textarea, summary, a';
      return [...document.querySelectorAll(touched)].every(
        (element) => mark(element, '__reactProps$') !== undefined,
      );
    },
    undefined,
    { timeout: 30_000, polling: 20 },
  );
}
