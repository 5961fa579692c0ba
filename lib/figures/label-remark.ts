import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { checkLabel } from '#lib/foods/check-label';
import { foodEnergyReason } from '#lib/foods/energy-remark';
import type { Food } from '#lib/foods/food';
import { likelySlips } from '#lib/foods/likely-slip';
import { secondWitness } from '#lib/foods/second-witness';

/** A label in a dish that cannot be as it was typed, or that its second witness contradicts. */
export interface LabelRemark {
  readonly foodId: string;
  /** The first ingredient that counts it. */
  readonly lineId: string;
  readonly words: string;
}

/**
 * Remarks on the labels that a dish counts, in the order of its ingredients, each label once: the likely slip
 * ("protein 2.4 looks like 24") or else what cannot be, then where its second witness disagrees, with the nutrient
 * and the factor. What was kept with a reason is no remark.
 * @example labelRemarks(file, segmentId)[0]?.words
 *   // 'Roasted chickpeas: protein 2.1 looks like 21. Protein, fat and carbohydrate alone give …'
 */
export function labelRemarks(file: EpisodeFile, segmentId: string): readonly LabelRemark[] {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const seen = new Set<string>();
  return (dish?.recipe.lines ?? []).flatMap(({ id: lineId, foodId, orFoodId }) =>
    [foodId, orFoodId].flatMap((each): LabelRemark[] => {
      const food = each === null ? undefined : foods.get(each);
      if (food?.kind !== 'label' || seen.has(food.id)) return [];
      seen.add(food.id);
      const witness = food.witnessId === null ? undefined : foods.get(food.witnessId);
      const own = cannotBe(food);
      const other = witness ? contradicted(food, witness) : null;
      if (own.length === 0 && other === null) return [];
      const words = [
        ...(own.length > 0 ? [`${food.name}: ${own.join(' ')}`] : []),
        ...(other === null ? [] : [`${food.name} against its second witness: ${other}.`]),
      ];
      return [{ foodId: food.id, lineId, words: words.join(' ') }];
    }),
  );
}

function cannotBe(food: Food): readonly string[] {
  const [problem] = checkLabel(food.version);
  if (!problem) return [];
  const [slip] = likelySlips(food.version);
  const reason = foodEnergyReason(food);
  return [...(slip ? [`${slip.message}.`] : []), problem.message, ...(reason ? [reason] : [])];
}

function contradicted(food: Food, witness: Food): string | null {
  const held = secondWitness(food, witness);
  if (!held.compared) return null;
  const far = held.disagreements.filter((each) => each.far).map(({ words }) => words);
  return far.length > 0 ? far.join('; ') : null;
}
