import 'server-only';
import {
  episodeFileSchema,
  type EpisodeFile,
  FILE_FORMAT,
  FILE_VERSION,
} from '#lib/episode/schema';
import { alsoFrom, loadOthers } from '#lib/store/also-filmed-rows';
import { inTransaction, type Tx } from '#lib/store/client';
import { foodsOfSwaps, loadPublish, publishFrom } from '#lib/store/publish-rows';
import { editFrom, loadEdit, loadEditRevisions, type EditRead } from '#lib/store/edit-rows';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import {
  dayFrom,
  episodeFrom,
  presentIn,
  recipeFrom,
  recipeOf,
} from '#lib/store/episode-from-rows';
import {
  foodFrom,
  kitchenFrom,
  lotFrom,
  packFrom,
  pantryFrom,
  shopFrom,
} from '#lib/store/from-rows';
import {
  ALIVE,
  byIds,
  EPISODE_INCLUDE,
  KITCHEN_INCLUDE,
  loadFoods,
  loadMadeFrom,
  LOT_INCLUDE,
  PACK_INCLUDE,
  type EpisodeTree,
} from '#lib/store/load';
import { loadScaleEntries, photographedLines } from '#lib/store/photographed-rows';
import { loadSaid, saidOf } from '#lib/store/said-rows';
import { localDate } from '#lib/units/local-date';

export interface ReadEpisodeOptions {
  /** Which of its filming days: none where it is not the episode's. Without it the next by date, else the last. */
  readonly dayId?: string | undefined;
  /** Instead, the first of them by date. */
  readonly day?: 'first';
  /**
   * With the texts of the edit, the readings put right and the answers to named foods. They may be megabytes, so that
   * only what reads them, or gives the whole file away, asks for them.
   */
  readonly edit?: boolean;
  /** With saved swaps (and the foods that they bring in), replies and pieces. */
  readonly publish?: boolean;
  readonly creatorId?: string;
}

/**
 * An episode with all it needs, in the plain form of its file; null if there is none. It holds the foods
 * that its ingredients use (and their witnesses), the stock and packs of those, and one filming day with what
 * other episodes have on it.
 * Everything is read in one state of the database. `savedAt` is the clock of what is made from it.
 */
export async function readEpisodeFile(
  episodeId: string,
  savedAt: string,
  options: ReadEpisodeOptions = {},
): Promise<EpisodeFile | null> {
  const creatorId = options.creatorId ?? DEFAULT_CREATOR_ID;
  const loaded = await inTransaction((tx) =>
    loadAll(tx, episodeId, creatorId, {
      ...options,
      savedAt,
      edit: options.edit === true ? 'all' : 'none',
    }),
  );
  if (!loaded) return null;
  const { day, others } = loaded;
  const {
    episode,
    madeFrom,
    kitchen,
    usedScales,
    foods,
    lots,
    packs,
    creator,
    saidRows,
    scaleEntries,
  } = loaded;
  const { pantry, shops } = loaded;
  const edit = loaded.edit && editFrom(loaded.edit, nameableIn(episode));
  const publish = loaded.publish && publishFrom(loaded.publish);
  const room = kitchen ? kitchenFrom(kitchen, usedScales) : DEFAULT_KITCHEN;
  const present = presentIn(episode, madeFrom, foods, room, photographedLines(scaleEntries));
  const also = alsoFrom(others, { kitchen: room, shops });
  const order = new Map(foods.map((food, index) => [food.id, index]));
  const byFood = (a: { foodId: string; id: string }, b: { foodId: string; id: string }) =>
    (order.get(a.foodId) ?? 0) - (order.get(b.foodId) ?? 0) || (a.id < b.id ? -1 : 1);
  return episodeFileSchema.parse({
    format: FILE_FORMAT,
    version: FILE_VERSION,
    savedAt,
    creator: {
      id: creatorId,
      name: creator?.name ?? '',
      wordsPerMinute: creator?.wordsPerMinute ?? null,
      ...(creator?.layout ? { layout: creator.layout } : {}),
    },
    kitchen: room,
    foods: foods.map(foodFrom),
    episode: episodeFrom(episode, present),
    recipes: madeFrom.map((recipe) => recipeFrom(recipe, present)),
    day: day
      ? dayFrom(
          day,
          present,
          others.flatMap(({ segments }) => segments),
        )
      : null,
    ...(also === undefined ? {} : { also }),
    said: saidOf(saidRows, present.segments),
    ...(edit ? { edit } : {}),
    ...(publish ? { publish } : {}),
    stock: lots.sort(byFood).map(lotFrom),
    packs: packs.sort(byFood).map((pack) => packFrom(pack, shops)),
    pantry: newestOfEach(pantry).sort(byFood).map(pantryFrom),
    shops: shops.map(shopFrom),
  });
}

/**
 * The revision of every row behind `readEpisodeFile`, by id: what a form must send back with a change.
 * @param dayId the filming day whose other episodes count too; all days' own rows always do
 */
export async function readRevisions(
  episodeId: string,
  creatorId = DEFAULT_CREATOR_ID,
  dayId?: string,
): Promise<Record<string, number>> {
  const savedAt = new Date().toISOString();
  const loaded = await inTransaction((tx) =>
    loadAll(tx, episodeId, creatorId, { dayId, savedAt, edit: 'revisions', publish: true }),
  );
  const revisions: Record<string, number> = {};
  collectRevisions(loaded, revisions);
  return revisions;
}

function collectRevisions(value: unknown, into: Record<string, number>): void {
  if (typeof value !== 'object' || value === null || value instanceof Date) return;
  if ('id' in value && 'rev' in value) into[String(value.id)] = Number(value.rev);
  for (const part of Object.values(value)) collectRevisions(part, into);
}

/** Segments with the portions of their dishes and their talking points. */
function nameableIn({ segments }: EpisodeTree) {
  return segments.map((segment) => ({
    id: segment.id,
    portions: recipeOf(segment)?.portions ?? [],
    talkingPoints: segment.talkingPoints,
  }));
}

/** Of each food the row that was made last; two may have been made at once. */
function newestOfEach<T extends { readonly foodId: string }>(rows: readonly T[]): T[] {
  return [...new Map(rows.map((row) => [row.foodId, row])).values()];
}

/** Shops that a file carries. */
const MOST_SHOPS = 50;

type Wanted = Pick<ReadEpisodeOptions, 'dayId' | 'day' | 'publish'> & {
  readonly savedAt: string;
  readonly edit: EditRead;
};

async function loadAll(tx: Tx, episodeId: string, creatorId: string, wanted: Wanted) {
  const episode = await tx.episode.findFirst({
    where: { id: episodeId, creatorId, ...ALIVE },
    include: EPISODE_INCLUDE,
  });
  if (!episode) return null;
  const own = { ...ALIVE, creatorId };
  const ofSegments = episode.segments.flatMap((segment) => recipeOf(segment) ?? []);
  const madeFrom = await loadMadeFrom(tx, ofSegments);
  const recipes = [...ofSegments, ...madeFrom];
  const publish = wanted.publish === true ? await loadPublish(tx, episodeId) : null;
  const foodIds = [
    ...recipes.flatMap(({ lines }) =>
      lines.flatMap((line) => [line.foodId ?? [], line.orFoodId ?? []].flat()),
    ),
    ...(publish ? foodsOfSwaps(publish) : []),
  ];
  const scaleIds = recipes.flatMap(({ weighings }) => weighings.map(({ scaleId }) => scaleId));
  const foods = await loadFoods(tx, foodIds, creatorId);
  const ids = foods.map((food) => food.id);
  const kitchen = await loadKitchen(tx, episode.kitchenId, creatorId);
  const day = dayOf(episode, wanted, kitchen?.zone ?? DEFAULT_KITCHEN.zone);
  return {
    episode,
    day,
    others: day ? await loadOthers(tx, day, episodeId, creatorId, { foods, recipes }) : [],
    madeFrom,
    foods,
    kitchen,
    usedScales: await byIds([...new Set(scaleIds)], (some) =>
      tx.scale.findMany({ where: { id: { in: some } }, orderBy: { id: 'asc' } }),
    ),
    lots: await byIds(ids, (some) =>
      tx.stockLot.findMany({ where: { ...own, foodId: { in: some } }, include: LOT_INCLUDE }),
    ),
    packs: await byIds(ids, (some) =>
      tx.pack.findMany({ where: { ...own, foodId: { in: some } }, include: PACK_INCLUDE }),
    ),
    scaleEntries: await loadScaleEntries(
      tx,
      episode.days.map(({ dayId }) => dayId),
      creatorId,
    ),
    saidRows: await loadSaid(
      tx,
      episodeId,
      episode.days.map(({ dayId }) => dayId),
      creatorId,
    ),
    pantry: await byIds(ids, (some) =>
      tx.pantryFood.findMany({ where: { ...own, foodId: { in: some } }, orderBy: { id: 'asc' } }),
    ),
    shops: await tx.shop.findMany({ where: own, orderBy: { id: 'asc' }, take: MOST_SHOPS }),
    creator: await tx.creator.findUnique({ where: { id: creatorId } }),
    publish,
    edit: await loadEdit(tx, episodeId, wanted.edit),
    editRevisions: await loadEditRevisions(tx, episodeId, wanted.edit),
  };
}

/** The episode's kitchen, or the creator's first. */
async function loadKitchen(tx: Tx, kitchenId: string | null, creatorId: string) {
  const include = KITCHEN_INCLUDE;
  const named = kitchenId && (await tx.kitchen.findUnique({ where: { id: kitchenId }, include }));
  if (named) return named;
  return tx.kitchen.findFirst({
    where: { creatorId, ...ALIVE },
    orderBy: { id: 'asc' },
    include,
  });
}

function dayOf(episode: EpisodeTree, { dayId, day, savedAt }: Wanted, zone: string) {
  const days = episode.days
    .map((filmed) => filmed.day)
    .sort((a, b) => (a.date === b.date ? (a.id < b.id ? -1 : 1) : a.date < b.date ? -1 : 1));
  if (dayId !== undefined) return days.find(({ id }) => id === dayId) ?? null;
  if (day === 'first') return days[0] ?? null;
  const today = localDate(new Date(savedAt), zone);
  return days.find(({ date }) => date >= today) ?? days.at(-1) ?? null;
}
