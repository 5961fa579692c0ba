import 'server-only';
import { headers } from 'next/headers';
import { dayOfRequest } from './asked-day';

/**
 * The filming day that the page shows from which an action comes, by that page's address; null where it shows the one
 * that is next. A browser that keeps addresses to itself is led back to that one.
 */
export async function shownDay(episodeId: string): Promise<string | null> {
  const from = await cameFrom();
  if (from === null || !URL.canParse(from)) return null;
  if (!new URL(from).pathname.startsWith(`/episodes/${episodeId}/day`)) return null;
  return dayOfRequest({ url: from } as Request) ?? null;
}

async function cameFrom(): Promise<string | null> {
  try {
    return (await headers()).get('referer');
  } catch {
    // Not called by a page.
    return null;
  }
}
