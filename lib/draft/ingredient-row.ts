import { LONGEST_LINE, readIngredient } from '#lib/episode/read-ingredient';
import type { ReadIngredient } from '#lib/episode/read-ingredient-types';
import { foldRow } from './text-rows';
import { NUTRIENT } from './words';

/** Counted things that are no food. */
const NO_FOOD =
  /^(?:minutes?|mins?|hours?|hrs?|seconds?|secs?|days?|weeks?|months?|years?|times?|tips?|ways?|reasons?|things?|recipes?|meals?|dishes|ingredients?|videos?|episodes?|degrees?|steps?|portions?|servings?|people|questions?|mistakes?|rules?|of)\b/;

const NUTRIENT_WORDS = String.raw`(?:k?cals?|calories|kj|protein|carbs?|fat|fib(?:re|er))`;
const NUMBERS_BEHIND = new RegExp(
  String.raw`\s*[-–—:(|,=]\s*(?:~|about )?\d[\d.,]*\s*g?\s*${NUTRIENT_WORDS}\b(?!\s*-?\s*(?:free|powder|bars?|shakes?|yog|milk|pudding))`,
  'i',
);

const MOST_WORDS = 14;

/** An ingredient in its words, without numbers of nutrients behind it. */
export interface IngredientRow {
  readonly text: string;
  readonly parts: readonly ReadIngredient[];
}

/**
 * The ingredient that words are, where they state an amount of a food and little else; null for all else.
 * @example ingredientRow('80 g oats – 303 kcal')?.text // '80 g oats'
 */
export function ingredientRow(words: string): IngredientRow | null {
  const { text, parts } = plainIngredient(words);
  const [part] = parts;
  if (part === undefined || part.quantity === null || part.food === '') return null;
  const food = foldRow(part.food);
  if (NUTRIENT.test(food) || NO_FOOD.test(food) || NO_FOOD.test(part.measure ?? '')) return null;
  if (/[!?]$/.test(text) || text.split(/\s+/).length > MOST_WORDS) return null;
  return { text, parts };
}

/** An ingredient of a list that is known to be one, with or without an amount. */
export function plainIngredient(words: string): IngredientRow {
  const behind = NUMBERS_BEHIND.exec(words.slice(0, LONGEST_LINE));
  const text = (behind && behind.index > 0 ? words.slice(0, behind.index) : words).trim();
  const parts = text.length > LONGEST_LINE ? [] : readIngredient(text);
  return { text: parts.map((part) => part.text).join(' '), parts };
}

const NUMBER = new RegExp(
  String.raw`\d\s*(?:g|grams?|%)?\s*(?:of )?${NUTRIENT_WORDS}\b(?!\s*-?\s*(?:free|powder|bars?|shakes?))|\b${NUTRIENT_WORDS}\s*[:=–-]?\s*~?\d`,
  'g',
);
const NUMBERS_FIRST =
  /^(?:macros?|nutrition|calories|kcal|totals?|day totals?|per (?:serving|portion|slice|bowl|jar|piece|100 ?g|one|bar|wrap|muffin)|each)\b[^\d]{0,40}\d/;

/** Whether a line says numbers of nutrients and is no ingredient. */
export function saysNumbers(folded: string): boolean {
  if (folded.length > 400) return false;
  if (NUMBERS_FIRST.test(folded)) return true;
  const found = [...folded.matchAll(NUMBER)].length;
  return (
    found >= 2 || (found === 1 && (/k?cals?\b|calories|\bkj\b/.test(folded) || folded.length < 24))
  );
}
