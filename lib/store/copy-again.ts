import 'server-only';
import { v7 as uuid } from 'uuid';
import { dishAgain, episodeAgain, type AgainAmounts } from '#lib/episode/again';
import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { failed, ok, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import {
  importEpisode,
  importLinks,
  importSegment,
  importSpans,
  mintSegments,
} from '#lib/store/import-episode';
import { ImportIds } from '#lib/store/import-ids';
import { ALIVE } from '#lib/store/load';
import { nextPlace } from '#lib/store/next-place';
import { readEpisodeFile } from '#lib/store/read-episode';
import { write } from '#lib/store/write';

/** What was made, and the act to undo it by. */
export interface Copied {
  readonly id: string;
  readonly groupId: string;
}

interface By {
  readonly amounts: AgainAmounts;
  readonly at: Date;
  readonly creatorId?: string;
}

/**
 * Adds a dish or talk of any episode to the end of an episode, as it begins anew (`dishAgain`), in one act of
 * the journal. All its rows are new; its foods are those that are there, with their newest version.
 */
export async function copySegment(
  segmentId: string,
  episodeId: string,
  { amounts, at, creatorId = DEFAULT_CREATOR_ID }: By,
): Promise<Result<Copied>> {
  const where = { id: segmentId, creatorId, ...ALIVE };
  const found = await database().segment.findFirst({ where, select: { episodeId: true } });
  const savedAt = at.toISOString();
  const from = found && (await readEpisodeFile(found.episodeId, savedAt, { creatorId }));
  const segment = from?.episode.segments.find(({ id }) => id === segmentId);
  const into = await readEpisodeFile(episodeId, savedAt, { creatorId });
  if (!from || !segment) return gone('What was to be copied');
  if (!into) return gone('The episode');
  const copy = dishAgain(from, segment, { amounts, kitchen: into.kitchen });
  const ids = known(from, [copy.segment]);
  mintSegments([copy.segment], ids);
  const edits = [
    ...importSegment(copy.segment, episodeId, await nextPlace('Segment', episodeId), ids),
    ...importSpans(copy.segment, 'segment', ids),
    ...importLinks(copy.links, episodeId, await nextPlace('StepLink', episodeId), ids),
  ];
  const id = ids.of('segment', segmentId, 'segment');
  return writeCopy(id, segment.title, edits, ids, { amounts, at, creatorId });
}

/** Makes a new episode of one that is there, as it begins anew (`episodeAgain`), in one act of the journal. */
export async function copyEpisode(
  episodeId: string,
  { amounts, at, creatorId = DEFAULT_CREATOR_ID }: By,
): Promise<Result<Copied>> {
  const from = await readEpisodeFile(episodeId, at.toISOString(), { creatorId });
  const row = await database().episode.findUnique({
    where: { id: episodeId },
    select: { kitchenId: true },
  });
  if (!from || !row) return gone('The episode');
  const { episode } = episodeAgain(from, { amounts });
  const ids = known(from, episode.segments);
  const id = uuid();
  const edits = importEpisode(episode, id, row.kitchenId, ids);
  const by = { amounts, at, creatorId };
  return writeCopy(id, from.episode.title, edits, ids, by);
}

/**
 * Foods, ovens, appliances and recipes that are not copied keep their ids; everything else is made anew, and each recipe
 * names its original.
 */
function known(from: EpisodeFile, copied: readonly Segment[]): ImportIds {
  const ids = new ImportIds(true);
  const made = new Set(copied.map(({ recipe }) => recipe?.id));
  const recipes = [...from.recipes, ...dishesOf(from.episode.segments).map((dish) => dish.recipe)];
  for (const { id } of recipes) if (!made.has(id)) ids.use('recipe', id, id);
  for (const { id } of from.foods) ids.use('food', id, id);
  for (const { id } of from.kitchen.ovens) ids.use('oven', id, id);
  for (const { id } of from.kitchen.appliances) ids.use('appliance', id, id);
  return ids;
}

async function writeCopy(
  id: string,
  title: string,
  edits: readonly Edit[],
  ids: ImportIds,
  { at, creatorId = DEFAULT_CREATOR_ID }: By,
): Promise<Result<Copied>> {
  if (ids.problems.length > 0) return { ok: false, problems: ids.problems };
  const label = `Again, from ${title}`;
  const written = await write({ actor: creatorId, label, at, edits, creatorId });
  return written.ok ? ok({ id, groupId: written.value.groupId }) : written;
}

function gone(what: string): Result<never> {
  const message = `${what} is no longer there: it was removed. Nothing was copied.`;
  return failed({ path: '', code: 'gone', message });
}
