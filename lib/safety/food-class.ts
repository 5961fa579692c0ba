import type { Food, FoodState } from '#lib/foods/food';
import { saysCooked } from '#lib/foods/guess-state';
import { foodKinds } from '#lib/safety/food-words';
import { safeTemperature, type FoodClass } from '#lib/safety/safe-temperatures';

/**
 * Rows of the safe-temperature chart under which what a text names may fall while it is cooked, the strictest first:
 * whatever the state in which it was weighed or sold, unless that is dry, or its words say that it is no such food or
 * is eaten as it is. A rule of thumb of ours over the words of ingredients, labels and tables ("Turkey, ground, 93 %
 * lean, raw"); where words leave it open the stricter row counts.
 * @example chartClasses('500 g chicken or salmon', 'asIs') // ['poultry', 'fish']
 */
export function chartClasses(text: string, state: FoodState): FoodClass[] {
  if (state === 'dry') return [];
  return [...new Set(foodKinds(text, state === 'raw').map(classOf))].sort(byStrictness);

  function classOf(kind: ReturnType<typeof foodKinds>[number]): FoodClass {
    // Ham is sold cooked unless somebody says that it is raw.
    if (kind === 'ham') return state === 'raw' ? 'wholeCut' : 'precookedHam';
    return kind;
  }
}

/** Puts the row with the higher temperature first, of two alike that with the longer rest. */
export function byStrictness(a: FoodClass, b: FoodClass): number {
  const [first, second] = [safeTemperature(a), safeTemperature(b)];
  return second.milliC - first.milliC || second.restS - first.restS;
}

/**
 * Which row of the chart a food falls under that is raw, or may be as it is sold; null for anything else, or that no
 * row covers. It proposes a caution and never withholds one that the person set.
 */
export function rawFoodClass(food: Pick<Food, 'name'>, state: FoodState): FoodClass | null {
  if (state !== 'raw' && (state !== 'asIs' || saysCooked(food.name))) return null;
  return chartClasses(food.name, state)[0] ?? null;
}
