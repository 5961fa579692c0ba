import type { EpisodeFile } from '#lib/episode/schema';
import { recipesOf, usedFoodIds } from '#lib/episode/context';
import { foodFields } from '#lib/lock/food-in-words';

/** A food whose own values are others than those that went out: every dish that has it is touched. */
export interface ChangedFood {
  readonly foodId: string;
  readonly name: string;
  /** The reading that went out. */
  readonly versionId: string;
  /** What of it changed: "protein: 12 g, was 21 g". */
  readonly words: readonly string[];
}

/**
 * The foods of what went out whose values are others now: read again, put right, or of a newer table. Another amount of
 * a food, or another food in its place, is a matter of one episode alone and none of these.
 * @param then the file as it was locked
 * @param now the same episode as it is
 */
export function changedFoods(then: EpisodeFile, now: EpisodeFile): readonly ChangedFood[] {
  const used = usedFoodIds(recipesOf(then));
  const since = new Map(now.foods.map((food) => [food.id, food]));
  return then.foods.flatMap((was): ChangedFood[] => {
    const is = since.get(was.id);
    if (!used.has(was.id) || !is) return [];
    const before = new Map(foodFields(was));
    const words = foodFields(is).flatMap(([name, text]) => {
      const old = before.get(name) ?? '';
      return old === text ? [] : [`${name}: ${text || 'nothing'}, was ${old || 'nothing'}`];
    });
    if (words.length === 0) return [];
    return [{ foodId: was.id, name: is.name, versionId: was.version.id, words }];
  });
}

/** Whether a locked file rests on the same reading of a food as another one does. */
export function restsOn(
  file: EpisodeFile,
  { foodId, versionId }: Pick<ChangedFood, 'foodId' | 'versionId'>,
): boolean {
  return (
    usedFoodIds(recipesOf(file)).has(foodId) &&
    file.foods.some(({ id, version }) => id === foodId && version.id === versionId)
  );
}
