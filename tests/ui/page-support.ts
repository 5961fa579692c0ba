import { readFileSync } from 'node:fs';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { UNTOUCHED, type FormState } from '../../app/_ui/form/form-state';

/** The demo as its file holds it. */
export function demoFile(): EpisodeFile {
  const url = new URL('../../seed/demo.episode.json', import.meta.url);
  const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
  if (!parsed.ok) throw new Error(`the demo must be readable: ${JSON.stringify(parsed.problems)}`);
  return parsed.value;
}

/** What is read, without the tags. */
export function words(markup: string): string {
  return markup
    .replace(/<style.*?<\/style>/gs, '')
    .replace(/<svg.*?<\/svg>/gs, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&amp;', '&')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#x27;', "'")
    .replace(/\s+/g, ' ')
    .trim();
}

/** Thrown by the stand-in for the router where an action leads elsewhere. */
export class Redirected extends Error {
  constructor(readonly href: string) {
    super(`redirected to ${href}`);
  }
}

type Action = (state: FormState, form: FormData) => Promise<FormState>;

/** Sends a form as a browser does; where it leads elsewhere, `href` says where. */
export async function send(
  action: Action,
  texts: Readonly<Record<string, string | number>>,
): Promise<{ readonly state: FormState; readonly href: string }> {
  const form = new FormData();
  for (const [name, value] of Object.entries(texts)) form.set(name, String(value));
  try {
    return { state: await action(UNTOUCHED, form), href: '' };
  } catch (error) {
    if (error instanceof Redirected) return { state: UNTOUCHED, href: error.href };
    throw error;
  }
}
