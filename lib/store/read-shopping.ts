import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { readScope, type ListScope } from '#lib/shopping/list-events';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import { readEpisodeFile } from '#lib/store/read-episode';

/** The files that a shopping list is made of. */
export interface ShoppingFiles {
  /** Those that are bought for, the earliest filming day first. */
  readonly files: readonly EpisodeFile[];
  /** Those planned after them, whose needs a rest may serve. */
  readonly later: readonly EpisodeFile[];
}

/** Episodes that one list reads at most, and episodes after them that are looked at. */
const MOST_EPISODES = 60;
const MOST_LATER = 12;

/**
 * The episodes of a list: one, or all that are filmed on a day of a span, each with that day; and the next ones filmed
 * after them.
 * @returns null where the scope names none that is there
 */
export async function readShoppingFiles(
  scope: ListScope,
  savedAt: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<ShoppingFiles | null> {
  const of = readScope(scope);
  if (of === null) return null;
  const files =
    'episodeId' in of
      ? await readAll([{ episodeId: of.episodeId }], savedAt, creatorId)
      : await readAll(await filmed(of, MOST_EPISODES, creatorId), savedAt, creatorId);
  if (files.length === 0 && 'episodeId' in of) return null;
  const last = 'to' in of ? of.to : (files[0]?.day?.date ?? null);
  if (last === null) return { files, later: [] };
  const bought = new Set(files.map(({ episode }) => episode.id));
  const next = await filmed({ from: last, to: '9999-12-31' }, MOST_LATER + files.length, creatorId);
  const others = next.filter(({ episodeId }) => !bought.has(episodeId)).slice(0, MOST_LATER);
  return { files, later: await readAll(others, savedAt, creatorId) };
}

interface Filmed {
  readonly episodeId: string;
  readonly dayId?: string;
}

/** Episodes filmed from a day to another, each once, with its first day there. */
async function filmed(
  { from, to }: { readonly from: string; readonly to: string },
  take: number,
  creatorId: string,
): Promise<readonly Filmed[]> {
  const mine = { ...ALIVE, creatorId };
  const rows = await database().dayEpisode.findMany({
    where: { ...mine, episode: mine, day: { ...mine, date: { gte: from, lte: to } } },
    orderBy: [{ day: { date: 'asc' } }, { id: 'asc' }],
    take,
    select: { episodeId: true, dayId: true },
  });
  const first = new Map<string, Filmed>();
  for (const row of rows) if (!first.has(row.episodeId)) first.set(row.episodeId, row);
  return [...first.values()];
}

async function readAll(
  episodes: readonly Filmed[],
  savedAt: string,
  creatorId: string,
): Promise<readonly EpisodeFile[]> {
  const files: EpisodeFile[] = [];
  for (const { episodeId, dayId } of episodes) {
    const file = await readEpisodeFile(episodeId, savedAt, {
      creatorId,
      ...(dayId === undefined ? { day: 'first' as const } : { dayId }),
    });
    if (file) files.push(file);
  }
  return files;
}
