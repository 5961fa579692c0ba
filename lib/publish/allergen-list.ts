import { ALLERGEN_WORDS, allergenStanding, REGION_ALLERGENS } from '#lib/foods/allergen-standing';
import type { Allergen, Food } from '#lib/foods/food';
import { recipesOf, usedFoodIds } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';

export { ALLERGEN_WORDS, REGION_ALLERGENS } from '#lib/foods/allergen-standing';

export interface AllergenEntry {
  readonly allergen: Allergen;
  readonly words: string;
  /** Names of the foods that bring it. */
  readonly foods: readonly string[];
}

export interface AllergenList {
  /** Declared on a label or confirmed by the person: what may be published. */
  readonly contains: readonly AllergenEntry[];
  readonly mayContain: readonly AllergenEntry[];
  /** Proposed by rule and not yet confirmed or denied: never published. */
  readonly proposed: readonly AllergenEntry[];
}

/** The allergens of all foods in an episode's dishes, in the order of the region's list. */
export function allergenList(file: EpisodeFile): AllergenList {
  const { region } = file.episode;
  const used = usedFoodIds(recipesOf(file));
  const foods = file.foods.filter((food) => used.has(food.id));
  const entries = (matches: (food: Food, allergen: Allergen) => boolean): AllergenEntry[] =>
    REGION_ALLERGENS[region].flatMap((allergen) => {
      const names = foods.filter((food) => matches(food, allergen)).map((food) => food.name);
      return names.length > 0 ? [{ allergen, words: ALLERGEN_WORDS[allergen], foods: names }] : [];
    });
  const contains = entries((food, allergen) => allergenStanding(food, allergen) === 'contains');
  const certain = new Set(contains.map((entry) => entry.allergen));
  return {
    contains,
    mayContain: entries(
      (food, allergen) => allergenStanding(food, allergen) === 'mayContain',
    ).filter((entry) => !certain.has(entry.allergen)),
    proposed: entries((food, allergen) => allergenStanding(food, allergen) === 'proposed'),
  };
}
