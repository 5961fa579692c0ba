import 'server-only';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { readEpisodeFile } from '#lib/store/read-episode';
import { dayOfRequest } from './asked-day';

export interface DayContext {
  readonly params: Promise<{ readonly id: string }>;
}

/** An episode with the filming day that a request asks for, or the answer that there is none. */
export async function readDayFile(
  request: Request,
  { params }: DayContext,
  savedAt = new Date().toISOString(),
): Promise<(EpisodeFile & { readonly day: FilmingDay }) | Response> {
  const file = await readEpisodeFile((await params).id, savedAt, { dayId: dayOfRequest(request) });
  if (!file?.day) return new Response('There is no filming day here.\n', { status: 404 });
  return { ...file, day: file.day };
}
