import type { Food } from '#lib/foods/food';
import { fatLevelOf } from '#lib/foods/match-food';
import { FAT_LEVELS, FAT_SECTIONS } from '#lib/foods/match-words';
import { fold } from '#lib/units/plain-words';

/** What a food is looked at for, to tell it from its variants. */
export type NamedFood = Pick<Food, 'id' | 'name' | 'section'>;

/** How much fat is in it, as every name may say it: '2% milkfat', '80% lean meat / 20% fat'. */
const SHARES =
  /\d+(?:\.\d+)?\s*%\s*(?:milk ?fat|fat|lean(?: meat)?)(?:\s*\/\s*\d+(?:\.\d+)?\s*%\s*fat)?/g;
/** What of a bird or a fish is counted, and what it lies in. */
const CUTS =
  /\bmeat (?:only|and skin)\b|\bin (?:(?:olive|vegetable|soybean) )?(?:oil|water|brine)\b/g;
/** Said of milk without making it another food. */
const BESIDE = /\bwith(?:out)? added (?:vitamin|nonfat milk solids).*$|^fluid$/;

/** The parts of a name between commas, in lower case. */
const partsOf = (name: string) =>
  fold(name)
    .split(/,(?![^()]*\))/)
    .map((part) => part.trim());

/** Ways to say how fat a food is, each to be looked for all over a name. */
function levels({ section }: NamedFood): RegExp[] {
  const words = FAT_LEVELS.map(([, level]) => new RegExp(`${level.source}(?: milk\\b)?`, 'g'));
  return [
    SHARES,
    ...(FAT_SECTIONS.has(section) ? words : []),
    ...(MEAT.has(section) ? [CUTS] : []),
  ];
}
const MEAT: ReadonlySet<string> = new Set(['meatAndFish']);

/** A part without how fat it says that the food is, and what it says of that. */
function apart(part: string, food: NamedFood): { readonly rest: string; readonly said: string[] } {
  const said: string[] = [];
  let rest = part;
  for (const level of levels(food)) {
    rest = rest.replace(level, (found) => {
      said.push(found.trim());
      return ' ';
    });
  }
  return { rest: rest.replace(/\s+/g, ' ').replace(BESIDE, '').trim(), said };
}

/** A name without all that tells one variant from another: what is searched for to find the others. */
export function variantKey(food: NamedFood): string {
  const parts = partsOf(food.name).map((part) => apart(part, food).rest);
  return [...new Set(parts.filter((part) => part !== ''))].sort().join(', ');
}

/**
 * What a food's name says of how fat it is, in its own words; empty where it says nothing of it.
 * @example variantWords({ name: 'Cheese, mozzarella, part skim milk', … }) // 'part skim milk'
 */
export function variantWords(food: NamedFood): string {
  return partsOf(food.name)
    .flatMap((part) => apart(part, food).said)
    .join(', ');
}

/**
 * Whether two foods are the same one but for how fat they are: whole or skimmed, leaner, without its skin, in oil or in
 * water. Told from their names alone; one that says nothing of it is a variant of those that do.
 * @example isVariant(mozzarellaWholeMilk, mozzarellaPartSkim) // true
 */
export function isVariant(a: NamedFood, b: NamedFood): boolean {
  if (a.id === b.id || a.section !== b.section) return false;
  return variantKey(a) === variantKey(b) && variantWords(a) !== variantWords(b);
}

/** Whether an ingredient's own words say how fat another variant is, and not how fat the one is that it has. */
export function saysOther(text: string, own: NamedFood, other: NamedFood): boolean {
  const said = fatLevelOf(fold(text));
  const [mine, theirs] = [own, other].map(({ name }) => fatLevelOf(fold(name)));
  return FAT_SECTIONS.has(own.section) && said !== null && said === theirs && said !== mine;
}
