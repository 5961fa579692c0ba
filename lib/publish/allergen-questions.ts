import type { Allergen, Food } from '#lib/foods/food';
import { recipesOf, usedFoodIds } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { ALLERGEN_WORDS, allergenList, REGION_ALLERGENS } from '#lib/publish/allergen-list';

/** An allergen that a rule proposes for a food: the person says whether it is in it. */
export interface AllergenQuestion {
  readonly foodId: string;
  readonly food: string;
  readonly allergen: Allergen;
  readonly words: string;
  /** The rule that proposes it, in words. */
  readonly reason: string;
}

/** What the person has said of a food's allergen, and the row to take it back by. */
export interface AllergenAnswer extends AllergenQuestion {
  readonly factId: string;
  readonly standing: 'confirmed' | 'denied';
}

/** Proposals that wait for the person's word, food by food, in the order of the region's list. */
export function allergenQuestions(file: EpisodeFile): AllergenQuestion[] {
  return allergenList(file).proposed.flatMap(({ allergen, words }) =>
    usedFoods(file).flatMap((food) => {
      const facts = food.allergens.filter((fact) => fact.allergen === allergen);
      const proposal = facts.find((fact) => fact.standing === 'proposed');
      const settled = facts.some((fact) => fact.standing !== 'proposed');
      if (!proposal || settled) return [];
      return [{ foodId: food.id, food: food.name, allergen, words, reason: proposal.reason }];
    }),
  );
}

/** What the person has confirmed or denied for the foods of this episode, in the same order. */
export function allergenAnswers(file: EpisodeFile): AllergenAnswer[] {
  return REGION_ALLERGENS[file.episode.region].flatMap((allergen) =>
    usedFoods(file).flatMap((food) =>
      food.allergens.flatMap(({ id, allergen: of, standing, reason }) =>
        of === allergen && (standing === 'confirmed' || standing === 'denied')
          ? [
              {
                foodId: food.id,
                food: food.name,
                allergen,
                words: ALLERGEN_WORDS[allergen],
                reason,
                factId: id,
                standing,
              },
            ]
          : [],
      ),
    ),
  );
}

function usedFoods(file: EpisodeFile): readonly Food[] {
  const used = usedFoodIds(recipesOf(file));
  return file.foods.filter((food) => used.has(food.id));
}
