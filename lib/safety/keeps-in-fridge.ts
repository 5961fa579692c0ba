import type { Food } from '#lib/foods/food';
import { COLD_STORAGE, type ColdStorage } from '#lib/safety/cold-storage';
import { rawFoodClass } from '#lib/safety/food-class';

/** Names of foods by row of the chart, the first that fits. */
const BY_NAME: readonly (readonly [RegExp, string])[] = [
  [/\b(bacon)\b/i, 'bacon'],
  [/\bsausages?\b/i, 'rawSausage'],
  [/\b(luncheon meat|lunch meat|deli (ham|turkey|chicken|beef)|ham, sliced)\b/i, 'lunchMeatOpened'],
];
const DRY = /\b(powder|dried|dehydrated|canned|bits|meatless|substitute|imitation)\b/i;

/**
 * The row of the cold storage chart that a food falls under once it stands in the refrigerator, by its name; null
 * where no row covers it. A rule of thumb of ours over names as tables write them: it proposes a limit, and the
 * person's own number of days wins.
 * @example keepsInFridge(turkey, ground, raw)?.refrigerator // 1 to 2 days
 */
export function keepsInFridge(
  food: Pick<Food, 'name'> & { readonly version: Pick<Food['version'], 'state'> },
): ColdStorage | null {
  const { name } = food;
  if (DRY.test(name)) return null;
  const named = BY_NAME.find(([pattern]) => pattern.test(name))?.[1];
  return row(named ?? rawRow(name, food.version.state)) ?? null;
}

function rawRow(name: string, state: Food['version']['state']): string | null {
  const of = rawFoodClass({ name }, state);
  if (of === 'eggDish')
    return /\b(whites?|yolks?)\b/i.test(name) ? 'rawWhitesYolks' : 'eggsInShell';
  if (of === null || of === 'fish' || of === 'precookedHam') return null;
  if (/\b(ground|minced?)\b/i.test(name)) return 'rawGround';
  return of === 'poultry' ? 'rawPoultryPieces' : 'steaks';
}

function row(id: string | null): ColdStorage | undefined {
  return COLD_STORAGE.find((each) => each.id === id);
}
