import { FOODS } from '#lib/claims/english/foods';
import { fold, singular } from '#lib/units/plain-words';
import { COOKED, DISH_WORDS, MEALS } from './words';

/**
 * Whether a chapter's title has words of a dish: a food, what is cooked, a meal.
 * @example namesDish('Courgette fritters') // true; of 'The green one' false
 */
export function namesDish(title: string): boolean {
  const folded = fold(title);
  const words = folded.match(/[\p{L}-]*\p{L}/gu) ?? [];
  return (
    MEALS.test(folded) ||
    words.some((word) => {
      const stem = singular(word);
      return [word, stem].some(
        (form) => FOODS.heads.has(form) || COOKED.has(form) || DISH_WORDS.has(form),
      );
    })
  );
}
