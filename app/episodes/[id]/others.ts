import 'server-only';
import { ownRecipesOf } from '#lib/episode/context';
import { matchQuery } from '#lib/episode/match-line';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { EpisodeFile } from '#lib/episode/schema';
import { otherFoods } from '#lib/store/match-foods';
import { foodHit } from '../../foods/search/food-hit';
import type { FoodHit } from '../../foods/search/hit';

/** Foods that the ingredients without a confirmed one may mean instead, by the ingredient's id. */
export async function othersOf(
  file: Pick<EpisodeFile, 'episode'>,
): Promise<Readonly<Record<string, readonly FoodHit[]>>> {
  const lines = ownRecipesOf(file).flatMap((recipe) => recipe.lines);
  const waiting = lines
    .filter(({ match, foodId }) => match === 'provisional' || foodId === null)
    .map(({ id, foodId, text }) => {
      const [part] = readIngredient(text);
      return { id, foodId, words: part ? matchQuery(part) : '' };
    });
  const found = await otherFoods(waiting);
  return Object.fromEntries(Object.entries(found).map(([id, foods]) => [id, foods.map(foodHit)]));
}
