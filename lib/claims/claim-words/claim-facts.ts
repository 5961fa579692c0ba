import { amountContext, type Dish } from '#lib/episode/context';
import type { DishClaims } from '#lib/episode/edit-schema';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Figure } from '#lib/figures/figure';
import { shareByMass } from '#lib/figures/finished-weight';
import type { Region } from '#lib/figures/line-parts';
import { addParts, figureOf, NOTHING, scaleParts, type Parts } from '#lib/figures/parts';
import { recipeParts } from '#lib/figures/recipe-parts';
import { portionShare } from '#lib/figures/shares';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Interval } from '#lib/units/interval';
import { quickBounds } from '#lib/units/quick-bounds';
import { divideBySource } from '#lib/units/sum-of-products';

/** What claim words said of a dish are judged by; figures are worked out when they are asked for. */
export interface ClaimFacts {
  readonly segmentId: string;
  readonly title: string;
  readonly region: Region;
  readonly claims: DishClaims | null;
  /** Milligrams of the finished dish; null where it was neither weighed nor has a cited yield. */
  readonly finishedMg: Interval | null;
  /** Ingredients: their words, and the food that was chosen for each. */
  readonly lines: readonly { readonly text: string; readonly food: string | null }[];
  /** Names of its portions; the whole dish where it has none. */
  readonly servings: readonly string[];
  /** Of the whole dish. */
  readonly whole: (nutrients: readonly Nutrient[]) => Figure;
  /** Of so many milligrams of the finished dish; null without its weight. */
  readonly ofMass: (nutrients: readonly Nutrient[], massMg: number) => Figure | null;
  /** Of the portion at a place in `servings`. */
  readonly ofServing: (nutrients: readonly Nutrient[], at: number) => Figure;
  /** So many times the nutrients for each kcal of the dish: at 400, percent of energy from protein. */
  readonly perEnergy: (nutrients: readonly Nutrient[], times: number) => Figure;
}

/**
 * Gathers what claim words said of a dish are judged by.
 * @example claimFacts(file, dish).perEnergy(['protein'], 400) // 36 % of a whole egg's energy, with its range
 */
export function claimFacts(file: EpisodeFile, dish: Dish): ClaimFacts {
  const context = amountContext(file);
  const { region } = file.episode;
  const { recipe, title } = dish;
  const finished = finishedWeight(recipe, context);
  const kept = new Map<Nutrient, Parts>();
  const one = (nutrient: Nutrient): Parts => {
    const known = kept.get(nutrient) ?? recipeParts(recipe, title, context, nutrient, region);
    kept.set(nutrient, known);
    return known;
  };
  const sum = (nutrients: readonly Nutrient[]) => addParts(nutrients.map(one));
  const figure = (nutrients: readonly Nutrient[], parts: Parts) =>
    figureOf(nutrients[0] ?? 'energyKcal', parts);
  return {
    segmentId: dish.id,
    title,
    region,
    claims: dish.claims,
    finishedMg: finished?.interval ?? null,
    lines: recipe.lines.map(({ text, foodId }) => ({
      text,
      food: foodId === null ? null : (context.foods.get(foodId)?.name ?? null),
    })),
    servings:
      recipe.portions.length === 0 ? ['the whole dish'] : recipe.portions.map(({ name }) => name),
    whole: (nutrients) => figure(nutrients, sum(nutrients)),
    ofMass: (nutrients, massMg) =>
      finished && figure(nutrients, shareByMass(sum(nutrients), finished, massMg)),
    ofServing: (nutrients, at) => {
      const portion = recipe.portions[at];
      const parts = sum(nutrients);
      return figure(
        nutrients,
        portion ? portionShare(dish, portion, finished).share(parts) : parts,
      );
    },
    perEnergy: (nutrients, times) =>
      figure(
        nutrients,
        scaleParts(perEnergyOf(sum(nutrients), one('energyKcal'), recipe.id), times),
      ),
  };
}

/**
 * One part for each unit of another. What the divisor lacks makes it at most, what the dividend lacks at least
 * (MODEL B.4); errors that both share are taken as one, so that grams of an ingredient cancel.
 */
function perEnergyOf(parts: Parts, energy: Parts, recipeId: string): Parts {
  const { low, value, high } = quickBounds(energy.terms, energy.sources);
  const open = [...parts.open, ...energy.open];
  if (low <= 0) return { ...NOTHING, open: [...open, ...energy.above, ...parts.above] };
  const id = `energy:${recipeId}`;
  return {
    terms: divideBySource(parts.terms, id),
    sources: new Map([
      ...parts.sources,
      ...energy.sources,
      [id, { low, value, high, of: energy.terms }] as const,
    ]),
    above: [...parts.above, ...energy.below],
    below: [...parts.below, ...energy.above],
    open,
    provisional: addParts([parts, energy]).provisional,
  };
}
