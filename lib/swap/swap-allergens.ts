import {
  ALLERGEN_WORDS,
  allergenStanding,
  REGION_ALLERGENS,
  type AllergenStanding,
} from '#lib/foods/allergen-standing';
import type { Allergen, Food } from '#lib/foods/food';
import { amountContext, dishesOf, usedFoodIds } from '#lib/episode/context';
import { nestedRecipe } from '#lib/episode/made-from';
import type { EpisodeFile, Recipe } from '#lib/episode/schema';

/** An allergen that a dish has after a swap and had not before, or the other way round. */
export interface AllergenChange {
  readonly allergen: Allergen;
  readonly words: string;
  readonly standing: AllergenStanding;
  /** Names of the foods that bring it, or that brought it. */
  readonly foods: readonly string[];
}

export interface AllergenChanges {
  readonly gained: readonly AllergenChange[];
  readonly lost: readonly AllergenChange[];
  /** New foods of whose allergens nothing is said. */
  readonly unsaid: readonly string[];
}

const ORDER: readonly (AllergenStanding | null)[] = [null, 'proposed', 'mayContain', 'contains'];

/**
 * The allergens that a dish gains and loses by a swap, in the order of the region's list; one that was a trace and is now
 * an ingredient is gained as well. A lost one says nothing of traces: the dish is not free of it by that.
 */
export function allergenChanges(
  before: EpisodeFile,
  after: EpisodeFile,
  segmentId: string,
): AllergenChanges {
  const [was, becomes] = [foodsOfDish(before, segmentId), foodsOfDish(after, segmentId)];
  const list = REGION_ALLERGENS[before.episode.region];
  const strongest = (foods: readonly Food[], allergen: Allergen): AllergenChange | null => {
    const standings = foods.map((food) => ({ food, standing: allergenStanding(food, allergen) }));
    const top = Math.max(0, ...standings.map(({ standing }) => ORDER.indexOf(standing)));
    const standing = ORDER[top] ?? null;
    if (standing === null) return null;
    const named = standings.filter((each) => each.standing === standing);
    const words = ALLERGEN_WORDS[allergen];
    return { allergen, words, standing, foods: named.map(({ food }) => food.name) };
  };
  const more = (from: readonly Food[], to: readonly Food[]) =>
    list.flatMap((allergen) => {
      const [a, b] = [strongest(from, allergen), strongest(to, allergen)];
      return b && ORDER.indexOf(b.standing) > ORDER.indexOf(a?.standing ?? null) ? [b] : [];
    });
  const old = new Set(was.map(({ id }) => id));
  return {
    gained: more(was, becomes),
    lost: more(becomes, was),
    unsaid: becomes
      .filter(({ id, allergens }) => !old.has(id) && allergens.length === 0)
      .map(({ name }) => name),
  };
}

/** The foods of a dish and of what it is made from. */
function foodsOfDish(file: EpisodeFile, segmentId: string): readonly Food[] {
  const context = amountContext(file);
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const recipes: Recipe[] = dish ? [dish.recipe] : [];
  for (const recipe of recipes) {
    for (const line of recipe.lines) {
      const nested = line.madeFrom ? nestedRecipe(line, context) : null;
      if (nested && !recipes.includes(nested)) recipes.push(nested);
    }
  }
  const used = usedFoodIds(recipes);
  return file.foods.filter(({ id }) => used.has(id));
}
