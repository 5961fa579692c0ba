import type { Food, FoodState } from '#lib/foods/food';
import type { FoodClass } from '#lib/safety/safe-temperatures';

const POULTRY = /\b(chicken|turkey|duck|goose|poultry|quail|pheasant)\b/i;
const MEAT = /\b(beef|pork|veal|lamb|mutton|bison|venison)\b/i;
const GROUND = /\b(ground|minced?)\b/i;
const FISH =
  /\b(fish|salmon|cod|haddock|trout|tuna|halibut|tilapia|mackerel|herring|plaice|sole|pollock)\b/i;
const EGG = /\beggs?\b/i;
/** Words that say the food is not the raw animal product itself. */
const NOT_RAW =
  /\b(broth|stock|bouillon|gravy|soup|powder|sauce|noodles?|eggplant|dried|canned)\b/i;

/**
 * Which row of the safe-temperature chart a raw food falls under, by its name; null for anything that
 * is not raw or that no row covers. A rule of thumb of ours over names as tables write them ("Turkey,
 * ground, 93 % lean, raw"): it proposes a caution and never withholds one that the person set.
 */
export function rawFoodClass(food: Pick<Food, 'name'>, state: FoodState): FoodClass | null {
  if (state !== 'raw' || NOT_RAW.test(food.name)) return null;
  if (POULTRY.test(food.name)) return 'poultry';
  if (MEAT.test(food.name)) return GROUND.test(food.name) ? 'groundMeat' : 'wholeCut';
  if (FISH.test(food.name)) return 'fish';
  return EGG.test(food.name) ? 'eggDish' : null;
}
