import type { FoodState } from '#lib/foods/food';
import type { FoodGroup } from '#lib/foods/food-groups';

/** Foods of these groups are eaten as they are sold: 'baked' in their names is how they were made. */
const SOLD_READY: ReadonlySet<FoodGroup> = new Set([
  '0300',
  '0600',
  '1400',
  '1800',
  '1900',
  '2100',
  '2200',
  '2500',
  '3600',
]);
const MEAT: ReadonlySet<FoodGroup> = new Set(['0500', '0700', '1000', '1300', '1500', '1700']);

/** How a food was bought, not how it was cooked at home. */
const BOUGHT_AS =
  /\b(pre-?cooked|fully cooked|(?:dry|oil|honey)[- ]roasted|dry heat|dry curd|toasted)\b/gi;
const COOKED =
  /\b(cooked|boiled|hard-boiled|roasted|rotisserie|baked|broiled|pan-broiled|braised|grilled|fried|pan-fried|stir-fried|steamed|stewed|simmered|microwaved|poached|scrambled)\b/i;
const DRY = /\b(dry|dried|dehydrated|freeze-dried)\b/i;

/**
 * Guesses from a reference food's description the state in which its composition holds.
 * In this order, words only: 'raw' → raw; a word for cooking → cooked (not in groups that are sold
 * ready to eat, where baked or fried is how the food was made, nor 'precooked' or 'dry roasted');
 * 'dry', 'dried' → dry; 'uncooked', and 'unprepared' meat → raw; 'drained' → drained; else asIs.
 * A guess is a default that the person can change, never a conversion.
 * `guessState('2000', 'Pasta, dry, enriched')` → `'dry'`.
 */
export function guessState(group: FoodGroup, name: string): FoodState {
  if (/\braw\b/i.test(name)) return 'raw';
  const words = name.replace(BOUGHT_AS, (found) => (/^dry heat$/i.test(found) ? 'cooked' : ' '));
  if (!SOLD_READY.has(group) && COOKED.test(words)) return 'cooked';
  if (DRY.test(words) && !(group === '1400' && /\bwine\b/i.test(name))) return 'dry';
  if (/\buncooked\b/i.test(words)) return 'raw';
  if (MEAT.has(group) && /\bunprepared\b/i.test(words)) return 'raw';
  if (/\bdrained\b/i.test(words)) return 'drained';
  return 'asIs';
}

/** Whether a name says that the food is cooked, at home or before it is sold. */
export function saysCooked(name: string): boolean {
  return COOKED.test(name);
}
