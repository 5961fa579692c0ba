import 'server-only';
import { z } from 'zod';
import { dishAgain, episodeAgain } from '#lib/episode/again';
import { foodChanges, foodsOf, type FoodsThen } from '#lib/episode/again-labels';
import type { EpisodeFile } from '#lib/episode/schema';
import { foodVersionSchema } from '#lib/foods/food';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { ALIVE, byIds } from '#lib/store/load';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { localDate } from '#lib/units/local-date';

/** A dish that another can be begun from. */
export interface DishToCopy {
  readonly segmentId: string;
  readonly title: string;
  readonly episodeTitle: string;
  /** Its last filming date, else its publish date; null where it has neither. */
  readonly date: string | null;
  /** Whether something was weighed, so that 'as planned' may be something else. */
  readonly weighed: boolean;
}

export interface DishesToCopy {
  readonly dishes: readonly DishToCopy[];
  readonly more: boolean;
}

/**
 * Dishes of all episodes, those of the last date first, without a date after them; ties by id, the newest
 * first. `words` keeps those whose title or episode's title has them all.
 */
export async function readDishesToCopy(
  { words = '', take = 8 }: { readonly words?: string; readonly take?: number } = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<DishesToCopy> {
  const episodes = await database().episode.findMany({
    where: { creatorId, ...ALIVE },
    select: {
      id: true,
      title: true,
      publishOn: true,
      days: { where: { ...ALIVE, day: ALIVE }, select: { day: { select: { date: true } } } },
    },
  });
  const inOrder = episodes
    .map(({ days, ...of }) => ({
      ...of,
      date:
        days
          .map(({ day }) => day.date)
          .sort()
          .at(-1) ?? of.publishOn,
    }))
    .sort((a, b) => compare(b.date ?? '', a.date ?? '') || compare(b.id, a.id));
  const wanted = folded(words).split(/\s+/).filter(Boolean);
  const dishes: DishToCopy[] = [];
  // A few episodes at a time: the newest dozen answers most, whatever the years hold.
  for (let at = 0; at < inOrder.length && dishes.length <= take; at += EPISODES_AT_ONCE) {
    const some = inOrder.slice(at, at + EPISODES_AT_ONCE);
    dishes.push(...(await dishesOfEpisodes(some)).filter((dish) => hasAll(dish, wanted)));
  }
  return { dishes: dishes.slice(0, take), more: dishes.length > take };
}

const EPISODES_AT_ONCE = 100;

interface DatedEpisode {
  readonly id: string;
  readonly title: string;
  readonly date: string | null;
}

async function dishesOfEpisodes(episodes: readonly DatedEpisode[]): Promise<DishToCopy[]> {
  const segments = await database().segment.findMany({
    where: { ...ALIVE, episodeId: { in: episodes.map(({ id }) => id) }, recipe: ALIVE },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    select: {
      id: true,
      title: true,
      episodeId: true,
      recipe: {
        select: { weighings: { where: { ...ALIVE, kind: 'raw' }, select: { id: true }, take: 1 } },
      },
    },
  });
  return episodes.flatMap(({ id, title: episodeTitle, date }) =>
    segments
      .filter(({ episodeId }) => episodeId === id)
      .map((segment) => ({
        segmentId: segment.id,
        title: segment.title,
        episodeTitle,
        date,
        weighed: (segment.recipe?.weighings.length ?? 0) > 0,
      })),
  );
}

function hasAll({ title, episodeTitle }: DishToCopy, wanted: readonly string[]): boolean {
  const text = folded(`${title} ${episodeTitle}`);
  return wanted.every((word) => text.includes(word));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Where a copied dish comes from, and when it was copied. */
export interface DishCopy {
  readonly segmentId: string;
  /** Local date of the copy in the kitchen's zone. */
  readonly copiedOn: string;
  /** The original, as it is called now; null where it was removed meanwhile. */
  readonly from: {
    readonly segmentId: string;
    readonly title: string;
    readonly episodeId: string;
    readonly episodeTitle: string;
  } | null;
}

/** The dishes of an episode that were begun from others, in viewing order. */
export async function readCopies(file: EpisodeFile): Promise<readonly DishCopy[]> {
  const rows = await database().recipe.findMany({
    where: {
      ...ALIVE,
      forkedFromId: { not: null },
      segments: { some: { episodeId: file.episode.id } },
    },
    select: { id: true, forkedFromId: true },
  });
  if (rows.length === 0) return [];
  const recipes = new Map(rows.map((row) => [row.id, row.forkedFromId ?? '']));
  const originals = await byIds([...new Set(recipes.values())], (ids) =>
    database().segment.findMany({
      where: { recipeId: { in: ids }, ...ALIVE, episode: ALIVE },
      orderBy: { id: 'asc' },
      select: {
        id: true,
        recipeId: true,
        title: true,
        episode: { select: { id: true, title: true } },
      },
    }),
  );
  const made = await database().change.findMany({
    where: { entity: 'Recipe', entityId: { in: [...recipes.keys()] }, before: null },
    orderBy: { seq: 'asc' },
    select: { entityId: true, at: true },
  });
  return file.episode.segments.flatMap((segment) => {
    const recipeId = segment.recipe?.id ?? '';
    const fromId = recipes.get(recipeId);
    const at = made.find(({ entityId }) => entityId === recipeId)?.at;
    if (fromId === undefined || !at) return [];
    const original = originals.find((each) => each.recipeId === fromId);
    return [
      {
        segmentId: segment.id,
        copiedOn: localDate(at, file.kitchen.zone),
        from: original
          ? {
              segmentId: original.id,
              title: original.title,
              episodeId: original.episode.id,
              episodeTitle: original.episode.title,
            }
          : null,
      },
    ];
  });
}

/**
 * What could not come along with a copy, and which foods say something else now, in words: told once, after
 * the copying.
 * @param of the copied segment's id, or the episode's own where all of it was copied
 */
export async function readCopyNotes(
  file: EpisodeFile,
  copies: readonly DishCopy[],
  of: string,
): Promise<readonly string[]> {
  const whole = of === file.episode.id;
  const copy = whole ? copies[0] : copies.find(({ segmentId }) => segmentId === of);
  const origin = copy?.from;
  const from = origin && (await readEpisodeFile(origin.episodeId, file.savedAt));
  if (!origin || !from) return [];
  const then = await readFoodsThen(from);
  const segments = from.episode.segments.filter(({ id }) => whole || id === origin.segmentId);
  const notes = whole
    ? episodeAgain(from).notes
    : segments.flatMap((segment) => dishAgain(from, segment, { kitchen: file.kitchen }).notes);
  const changes = foodChanges(foodsOf(from, segments), then);
  return [...notes, ...changes].map(({ message }) => message);
}

const lockedFoods = z.object({
  file: z.object({ foods: z.array(z.object({ id: z.string(), version: foodVersionSchema })) }),
});

/** What an episode's foods were when it was made: by its last lock, else by its last date. */
async function readFoodsThen(file: EpisodeFile): Promise<FoodsThen> {
  const lock = await readLastLock(file.episode.id);
  const locked = lock && lockedFoods.safeParse(JSON.parse(lock.snapshot));
  const foods = locked?.success ? locked.data.file.foods : [];
  const readings = file.episode.segments.flatMap(({ recipe }) =>
    (recipe?.weighings ?? []).map(({ at }) => localDate(new Date(at), file.kitchen.zone)),
  );
  const date = readings.sort().at(-1) ?? file.day?.date ?? file.episode.publishOn;
  return { versions: new Map(foods.map(({ id, version }) => [id, version])), date };
}
