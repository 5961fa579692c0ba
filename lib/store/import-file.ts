import 'server-only';
import { v7 as uuid } from 'uuid';
import type { EpisodeFile } from '#lib/episode/schema';
import { ok, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit, Command } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { importDay } from '#lib/store/import-day';
import { importEpisode, mintSegments } from '#lib/store/import-episode';
import { importRecipes, mintRecipe } from '#lib/store/import-recipe';
import { importOthers, mintOthers, recipesOfNoOther } from '#lib/store/import-also';
import { importEdit } from '#lib/store/import-edit';
import { importFoods } from '#lib/store/import-foods';
import { ImportIds } from '#lib/store/import-ids';
import { importKitchen } from '#lib/store/import-kitchen';
import { importStock } from '#lib/store/import-stock';
import { importPublish } from '#lib/store/import-publish';
import { importPhotographed } from '#lib/store/photographed-rows';
import { importSaid } from '#lib/store/said-rows';
import { write } from '#lib/store/write';

/**
 * Adds an episode file to the store as one act of the journal. Ids in a file are local names: the episode
 * and its day become new rows, while foods, kitchen, stock and packs that are there with equal data are
 * used. A creator who has no name, speaking rate or house layout yet takes the file's. What `readEpisodeFile` then reads
 * equals the file up to ids. Another episode of the day becomes one here too, of the segments that the file has of it.
 */
export async function importEpisodeFile(
  file: EpisodeFile,
  at: Date,
  creatorId: string = DEFAULT_CREATOR_ID,
): Promise<Result<{ readonly episodeId: string }>> {
  const edits = await fileEdits(file, at, creatorId, new ImportIds());
  if (!edits.ok) return edits;
  const written = await write(importAct(file, at, creatorId, edits.value.edits));
  return written.ok ? ok({ episodeId: edits.value.episodeId }) : written;
}

/** An import as an act of the journal. */
export function importAct(
  { episode }: EpisodeFile,
  at: Date,
  creatorId: string,
  edits: readonly Edit[],
): Command {
  return { actor: 'import', label: `Import ${episode.title}`, at, edits, creatorId };
}

/** The edits that bring a file in, and in `ids` what each of its names became. */
export async function fileEdits(
  file: EpisodeFile,
  at: Date,
  creatorId: string,
  ids: ImportIds,
): Promise<Result<{ readonly episodeId: string; readonly edits: readonly Edit[] }>> {
  const episodeId = ids.fresh(file.episode.id);
  // Before the foods: a yield of one's own names the ingredient whose cooking it was.
  mintSegments(file.episode.segments, ids);
  for (const recipe of file.recipes) mintRecipe(recipe, ids);
  const also = file.also ?? [];
  mintOthers(also, ids);
  const edits: Edit[] = [
    ...(await creatorEdits(file.creator, creatorId)),
    ...(await importFoods(
      [...file.foods, ...also.flatMap(({ foods }) => foods)],
      at,
      creatorId,
      ids,
    )),
  ];
  const kitchen = await importKitchen(file.kitchen, creatorId, ids);
  edits.push(...kitchen.edits);
  edits.push(...importRecipes(recipesOfNoOther(file), ids));
  edits.push(...importEpisode(file.episode, episodeId, kitchen.kitchenId, ids));
  if (file.edit) edits.push(...importEdit(file.edit, episodeId, ids));
  if (file.publish) edits.push(...importPublish(file.publish, episodeId, ids));
  const others = also.map((other) => ({ ...other, id: uuid() }));
  edits.push(...importOthers(others, kitchen.kitchenId, ids));
  if (file.day) {
    const dayId = ids.fresh(file.day.id);
    edits.push(...importDay(file.day, episodeId, kitchen.kitchenId, ids, dayId, others));
    edits.push(...importSaid(file.said, dayId, ids), ...importPhotographed(file, dayId, ids));
  }
  const stock = [...file.stock, ...also.flatMap((other) => other.stock)];
  const packs = [...file.packs, ...also.flatMap((other) => other.packs)];
  edits.push(...(await importStock({ ...file, stock, packs }, creatorId, ids)));
  if (ids.problems.length > 0) return { ok: false, problems: ids.problems };
  return ok({ episodeId, edits });
}

/** What the file knows of its creator and nobody has said here. */
async function creatorEdits(of: EpisodeFile['creator'], id: string): Promise<Edit[]> {
  const { name, wordsPerMinute, layout } = of;
  const creator = await database().creator.findUnique({ where: { id } });
  if (!creator) {
    const row = { id, name, wordsPerMinute, layout: layout ?? null };
    return [{ op: 'create', entity: 'Creator', row }];
  }
  const patch = {
    ...(creator.name === '' && name !== '' ? { name } : {}),
    ...(creator.wordsPerMinute === null && wordsPerMinute !== null ? { wordsPerMinute } : {}),
    ...(creator.layout === null && layout !== undefined ? { layout } : {}),
  };
  if (Object.keys(patch).length === 0) return [];
  return [{ op: 'update', entity: 'Creator', id, rev: creator.rev, patch }];
}
