import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { printGrams } from '#lib/units/print';
import { quantityText } from '#lib/units/read-quantity';

/** Words of household amounts that end in -s where there are several. */
const COUNTED = /^(tablespoon|teaspoon|cup|slice|piece|serving|pack|clove|tin|can|pot|jar|egg)s?$/;

/**
 * An ingredient's words with the amount that it has now in the place of the one they name. Words that name none, or more
 * than can be told, stay as they are.
 * @example textAtAmount({ text: '200 g curd', planned: 235 g, … }) // '235 g curd'
 * @example textAtAmount({ text: '2 slices bread', quantity: 3, planned: null, … }) // '3 slices bread'
 */
export function textAtAmount({ text, planned, quantity }: RecipeLine): string {
  const [part, ...others] = readIngredient(text);
  if (!part || others.length > 0 || part.household === '') return text;
  const { household } = part;
  const amount = planned
    ? `${printGrams(planned.valueMg)} g`
    : quantity && countedText(household, quantity);
  const at = text.indexOf(household);
  if (!amount || at < 0) return text;
  const rest = text.slice(at + household.length).replace(/^\s*\([^()]*\d\s*(?:g|oz|ml)\)/, '');
  // Grams that stand elsewhere in the words would be those of before.
  if (/\d\s*(?:g|kg|oz|ml)\b/.test(`${text.slice(0, at)}${rest}`)) return text;
  const next = `${text.slice(0, at)}${amount}${rest}`;
  return readIngredient(next)[0]?.food === part.food ? next : text;
}

function countedText(household: string, quantity: NonNullable<RecipeLine['quantity']>): string {
  const word = household.replace(/^[\d\s./,½¼¾⅓⅔–-]+/, '');
  const several = quantity.low.num > quantity.low.den;
  const named = COUNTED.test(word) ? `${word.replace(/s$/, '')}${several ? 's' : ''}` : word;
  return `${quantityText(quantity)} ${named}`.trim();
}
