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
  return listOf(usedFoods(file), REGION_ALLERGENS[file.episode.region]);
}

/**
 * The allergens of an episode as it is now and as it was locked, by both regions where they differ: what either has is
 * in the list. What the person has denied of a food since then no longer counts.
 */
export function allergensOfBoth(live: EpisodeFile, locked: EpisodeFile | null): AllergenList {
  if (locked === null) return allergenList(live);
  const now = new Map(live.foods.map((food) => [food.id, food]));
  const then = usedFoods(locked).map((food): Food => {
    const denied = (now.get(food.id)?.allergens ?? []).filter(({ standing, allergen }) => {
      const kept = food.allergens.some((f) => f.standing === 'denied' && f.allergen === allergen);
      return standing === 'denied' && !kept;
    });
    const left = food.allergens.filter(
      ({ allergen }) => !denied.some((fact) => fact.allergen === allergen),
    );
    return { ...food, allergens: [...left, ...denied] };
  });
  const regions = [live.episode.region, locked.episode.region];
  const allergens = [...new Set(regions.flatMap((region) => REGION_ALLERGENS[region]))];
  // Answers are asked about what is there to be answered.
  const { proposed } = allergenList(live);
  return { ...listOf([...usedFoods(live), ...then], allergens), proposed };
}

function usedFoods(file: EpisodeFile): readonly Food[] {
  const used = usedFoodIds(recipesOf(file));
  return file.foods.filter((food) => used.has(food.id));
}

function listOf(foods: readonly Food[], allergens: readonly Allergen[]): AllergenList {
  const entries = (matches: (food: Food, allergen: Allergen) => boolean): AllergenEntry[] =>
    allergens.flatMap((allergen) => {
      const named = foods.filter((food) => matches(food, allergen)).map((food) => food.name);
      const names = [...new Set(named)];
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
