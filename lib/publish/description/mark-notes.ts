import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import { lines, type Section } from '#lib/publish/document/document';
import type { NumbersToPublish } from '#lib/publish/from-lock';
import { isSaidAgainst, markOf } from '#lib/publish/number-mark';

/** Numbers that a text shows together, and what they are of. */
export interface ShownNumbers {
  /** "Oat tray", "Oat tray, a quarter", "The whole day". */
  readonly title: string;
  /** Its dish; null for the day. */
  readonly segmentId: string | null;
  readonly scope: NumberScope;
  readonly nutrients: readonly Nutrient[];
}

/**
 * What the marks of a text mean: for every number that it shows with * or †, and for none that it does not show. The
 * part eaten of a dish is told only where it is none of the dish's other numbers.
 * @param shown all numbers of the text, in the order in which they are told
 * @example markNotes(publish, shown) // [[], lines('† Soup: 251 kcal is what was said in the video; by …')]
 */
export function markNotes(
  { numbers }: Pick<NumbersToPublish, 'numbers'>,
  shown: readonly ShownNumbers[],
): readonly Section[] {
  const starred = shown.some(({ scope, nutrients }) =>
    nutrients.some((nutrient) => markOf(numbers(nutrient, scope)) === '*'),
  );
  const told = new Set<string>();
  const said = shown.flatMap(({ title, segmentId, scope, nutrients }) =>
    nutrients.flatMap((nutrient) => {
      const number = numbers(nutrient, scope);
      if (!isSaidAgainst(number)) return [];
      const what = isEnergy(number.unit) ? '' : ` ${number.label}`;
      const why = number.said?.outside
        ? `by the ingredients it is ${number.range} ${number.unit}`
        : 'it does not add up with the other numbers that were said';
      const words = `${number.text} ${number.unit}${what} is what was said in the video; ${why}.`;
      const key = JSON.stringify([segmentId, words]);
      if (scope.kind === 'eaten' && told.has(key)) return [];
      told.add(key);
      return [`† ${title}: ${words}`];
    }),
  );
  return [lines(starred ? '* adds up only because of rounding' : ''), lines(...said)];
}

const isEnergy = (unit: string) => unit === 'kcal' || unit === 'kJ';
