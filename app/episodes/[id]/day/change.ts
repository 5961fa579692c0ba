import 'server-only';
import { redirect } from 'next/navigation';
import type { EpisodeFile } from '#lib/episode/schema';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { readRevisedEpisode, type RevisedEpisode } from '#lib/store/read-revised-episode';
import { fieldOfColumn } from '../../../_forms/parse-then-act';
import { change as changeEpisode } from '../change';
import { withDay } from './asked-day';
import { dayField } from './edits';
import { shownDay } from './shown-day';

/** One act on the day; every page of the episode is read anew. */
export async function change(
  episodeId: string,
  label: string,
  edits: readonly Edit[],
): Promise<Result<string>> {
  const done = await changeEpisode(episodeId, label, edits);
  return done.ok ? ok(`${done.value} The day is planned again.`) : done;
}

/** The address of the day page at what it was asked for, with the day that it showed. */
async function backTo(episodeId: string, query: string): Promise<string> {
  return withDay(`/episodes/${episodeId}/day?${query}`, await shownDay(episodeId));
}

/** Shows the page at a row with its form closed, once the row was saved. */
export async function changeAndClose(
  episodeId: string,
  rowId: string,
  label: string,
  edits: readonly Edit[],
): Promise<Result<string>> {
  const done = await change(episodeId, label, edits);
  if (done.ok) redirect(await backTo(episodeId, `at=${rowId}#row-${rowId}`));
  return done;
}

/** Shows the page with the form of another row open, once the row was saved. */
export async function changeAndOpen(
  episodeId: string,
  rowId: string,
  label: string,
  edits: readonly Edit[],
): Promise<Result<string>> {
  const done = await change(episodeId, label, edits);
  if (done.ok) redirect(await backTo(episodeId, `edit=${rowId}#row-${rowId}`));
  return done;
}

export const fieldOf = (path: string) => dayField(fieldOfColumn(path));

export const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This is no longer there: open the page again.',
});

/** The refusal of a step that was taken out meanwhile, at the field that names it; null where all are there. */
export function missingStep(
  file: { readonly episode: Pick<EpisodeFile['episode'], 'segments'> },
  chosen: Readonly<Record<string, string>>,
) {
  const steps = new Set(file.episode.segments.flatMap(({ steps }) => steps.map(({ id }) => id)));
  const field = Object.keys(chosen).find((name) => !steps.has(chosen[name] ?? ''));
  if (field === undefined) return null;
  const message = 'This step is no longer there: choose another.';
  return failed({ path: field, code: 'gone', message });
}

/** @param dayId one of its filming days; without it the one that the page shows, else the one that is next */
export async function readDay(episodeId: string, dayId?: string): Promise<RevisedEpisode | null> {
  const asked = dayId ?? (await shownDay(episodeId)) ?? undefined;
  return readRevisedEpisode(episodeId, new Date().toISOString(), { dayId: asked });
}
