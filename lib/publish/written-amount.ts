import { readIngredient } from '#lib/episode/read-ingredient';
import { numberAt } from '#lib/episode/read-ingredient-number';
import { textOf, tokenize } from '#lib/episode/read-ingredient-tokens';
import type { LineUnit } from '#lib/episode/recipe-schema';
import { quantityText } from '#lib/units/read-quantity';
import { MEASURE_WORDS } from '#lib/units/unit-words';

/** Units that are written short before the food: "250 g lentils", "1 tbsp oil". */
const SHORT: ReadonlySet<LineUnit> = new Set(['g', 'kg', 'oz', 'lb', 'ml', 'l', 'tsp', 'tbsp']);

/** Amounts that nobody counts: "a pinch" is no more exact as "1 pinch". */
const BY_FEEL = /^an? (?:pinch|handful|knob|dash|drizzle|splash|squeeze|bunch|bit)$/i;

const DIGIT = /[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/;

/**
 * An ingredient's words with an amount that is spoken in words written in digits, as a description prints it. Words that
 * have digits, or name no amount or more than one, stay as they are. Law: read again, it is the same amount of the same
 * food.
 * @example writtenAmount('Two hundred and fifty grams of red lentil pasta') // '250 g red lentil pasta'
 * @example writtenAmount('Half a cucumber') // '1/2 cucumber'
 */
export function writtenAmount(text: string): string {
  const [part, ...others] = readIngredient(text);
  if (!part?.quantity || others.length > 0 || part.household === '') return text;
  if (part.food === '' || DIGIT.test(part.household) || BY_FEEL.test(part.household)) return text;
  const at = placeOf(part.household, text);
  // The food that follows says where a number ends: "half a" of a cucumber.
  const number = at < 0 ? null : numberAt(tokenize(text.slice(at)), 0);
  if (!number) return text;
  const short = part.unit !== null && SHORT.has(part.unit);
  const measure = short
    ? shortWord(part.unit)
    : textOf(tokenize(part.household).slice(number.next));
  const amount = `${quantityText(part.quantity)} ${measure}`.trim();
  const rest = text.slice(at + part.household.length);
  const next = `${text.slice(0, at)}${amount}${short ? rest.replace(/^ of\b/, '') : rest}`;
  const [again, ...more] = readIngredient(next);
  const same =
    again?.quantity &&
    more.length === 0 &&
    again.food === part.food &&
    again.unit === part.unit &&
    quantityText(again.quantity) === quantityText(part.quantity);
  return same ? next : text;
}

const shortWord = (unit: LineUnit | null) =>
  Object.entries(MEASURE_WORDS).find(([name]) => name === unit)?.[1] ?? '';

/** Where whole words begin in a text; -1 where they do not stand in it as they are. */
function placeOf(words: string, text: string): number {
  let at = text.indexOf(words);
  const isLetter = (sign: string | undefined) => sign !== undefined && /\p{L}/u.test(sign);
  while (at >= 0 && (isLetter(text[at - 1]) || isLetter(text[at + words.length])))
    at = text.indexOf(words, at + 1);
  return at;
}
