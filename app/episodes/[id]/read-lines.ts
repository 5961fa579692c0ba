import 'server-only';
import { ownRecipesOf } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { failed } from '#lib/result';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readRevisedEpisode, type RevisedEpisode } from '#lib/store/read-revised-episode';

export const LINE_GONE = failed({
  path: '',
  code: 'gone',
  message: 'This ingredient is no longer there: open the page again.',
});

/** An ingredient of one of an episode's dishes, as it is now; null where it is gone. */
export async function readLine(episodeId: string, lineId: string): Promise<RecipeLine | null> {
  const file = await readEpisodeFile(episodeId, new Date().toISOString());
  const lines = file ? ownRecipesOf(file).flatMap((recipe) => recipe.lines) : [];
  return lines.find(({ id }) => id === lineId) ?? null;
}

/** The recipes of an episode's dishes with the revisions of their rows; none where the episode is gone. */
export async function readRevisedRecipes(
  episodeId: string,
  at: Date,
): Promise<Pick<RevisedEpisode, 'revs'> & { readonly recipes: readonly Recipe[] }> {
  const read = await readRevisedEpisode(episodeId, at.toISOString());
  return { recipes: read ? ownRecipesOf(read.file) : [], revs: read?.revs ?? {} };
}
