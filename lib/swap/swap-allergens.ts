import {
  ALLERGEN_WORDS,
  allergenStanding,
  REGION_ALLERGENS,
  type AllergenStanding,
} from '#lib/foods/allergen-standing';
import type { Allergen, Food } from '#lib/foods/food';
import { amountContext, dishesOf, usedFoodIds } from '#lib/episode/context';
import { nestedRecipe } from '#lib/episode/made-from';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';

/** An allergen that a dish has after a swap and had not before, or the other way round. */
export interface AllergenChange {
  readonly allergen: Allergen;
  readonly words: string;
  /** How it stands after the swap; of a lost one, how it stood before. */
  readonly standing: AllergenStanding;
  /** Names of the foods that bring it, or that brought it. */
  readonly foods: readonly string[];
}

export interface AllergenChanges {
  readonly gained: readonly AllergenChange[];
  /** Still there, but less surely: an ingredient before, a trace or a question now. */
  readonly lessSure: readonly AllergenChange[];
  /** Of which nothing is left, while something is said of every food that came in. */
  readonly lost: readonly AllergenChange[];
  /** New foods of whose allergens nothing is said. */
  readonly unsaid: readonly string[];
}

const ORDER: readonly (AllergenStanding | null)[] = [null, 'proposed', 'mayContain', 'contains'];

/**
 * The allergens that a dish gains and loses by a swap, in the order of the region's list; one that was a trace and is now
 * an ingredient is gained as well. None is lost that may still be there: neither by another food, nor by a new one of
 * which nobody has said anything. A lost one says nothing of traces: the dish is not free of it by that.
 * @example allergenChanges(labelledSkyr, tableYoghurt, 'bowl') // gained [], lessSure milk 'proposed', lost []
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
  const stands = list.map((allergen) => ({
    from: strongest(was, allergen),
    to: strongest(becomes, allergen),
  }));
  const rank = (change: AllergenChange | null) => ORDER.indexOf(change?.standing ?? null);
  const old = new Set(was.map(({ id }) => id));
  const unsaid = becomes.filter(({ id, allergens }) => !old.has(id) && allergens.length === 0);
  return {
    gained: stands.flatMap(({ from, to }) => (to && rank(to) > rank(from) ? [to] : [])),
    lessSure: stands.flatMap(({ from, to }) => (to && rank(to) < rank(from) ? [to] : [])),
    lost:
      unsaid.length > 0
        ? []
        : stands.flatMap(({ from, to }) => (from && to === null ? [from] : [])),
    unsaid: unsaid.map(({ name }) => name),
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
