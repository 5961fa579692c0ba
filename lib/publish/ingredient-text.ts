import { readIngredient } from '#lib/episode/read-ingredient';
import { STATE_WORDS } from '#lib/foods/state-words';
import { amountApart, gramsIn, isOtherWeight, isWeighed } from '#lib/episode/amount-apart';
import type { AmountContext } from '#lib/episode/context';
import { lineAmount, type LineAmount } from '#lib/episode/line-amount';
import { nestedRecipe, takenWords } from '#lib/episode/made-from';
import type { LineUnit, Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { householdAmount } from '#lib/publish/household-amount';
import { writtenAmount } from '#lib/publish/written-amount';
import { printGrams, printTo } from '#lib/units/print';
import { quantityText } from '#lib/units/read-quantity';
import { evaluate, type Term } from '#lib/units/sum-of-products';

/** Household units as the viewer reads them, one and several. */
const UNIT_WORDS: Partial<Readonly<Record<LineUnit, readonly [string, string]>>> = {
  tsp: ['tsp', 'tsp'],
  tbsp: ['tbsp', 'tbsp'],
  flOz: ['fl oz', 'fl oz'],
  cup: ['cup', 'cups'],
  piece: ['piece', 'pieces'],
  serving: ['serving', 'servings'],
  pack: ['pack', 'packs'],
  oz: ['oz', 'oz'],
  lb: ['lb', 'lb'],
};

/**
 * An ingredient as the viewer reads it: the words as written, an amount that they speak in digits, then grams and the
 * state they hold in, and the household amount where the words have none, also one that grams come to. One that is made from a dish says which: that dish by name where the
 * same text has it (`dishes`), else what it is made of.
 * `ingredientText(line, …)` → `'14 oz ground turkey, 93 % (397 g, raw)'`; without grams `'salt to taste (not weighed)'`.
 */
export function ingredientText(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
  dishes: ReadonlyMap<string, string> = new Map(),
): string {
  const amount = lineAmount(line, weighings, context);
  const written = { ...line, text: writtenAmount(line.text) };
  const valueOf = (terms: readonly Term[]) =>
    evaluate(terms, new Map([...amount.sources].map(([id, { value }]) => [id, value])));
  const nested = nestedRecipe(line, context);
  if (nested) return nestedText(written, amount, weighings, nested, context, dishes);
  const state = STATE_WORDS[line.state];
  const peel = `${line.asBought ? ', with peel and trim' : ''}${untyped(line)}`;
  if (amount.massMg) {
    const massMg = valueOf(amount.massMg);
    const food = line.foodId === null ? undefined : context.foods.get(line.foodId);
    const about = food ? householdAmount(written, massMg, food) : null;
    const grams = countedGrams({ ...line, text: written.text }, massMg, weighings, context);
    const amounts = [...household(written), ...(about === null ? [] : [about]), ...grams];
    if (amounts.length === 0 && peel === '' && namesState(line)) return written.text;
    return `${written.text} (${[...amounts, `${state}${peel}`].join(', ')})`;
  }
  if (amount.volumeMl) {
    const ml = `${printTo(valueOf(amount.volumeMl), 1)} ml`;
    const counted = amountApart(line, weighings, context) ? `counted: ${ml}` : ml;
    return `${written.text} (${[...household(written), counted, state].join(', ')})`;
  }
  return `${written.text} (${gramsIn(written.text).length > 0 ? 'not counted' : 'not weighed'})`;
}

/**
 * The grams that are counted, as they stand behind an ingredient's words; nothing where the words name these and no
 * others. Where the words name another amount, it is said which of the two is counted: `'counted: 150 g'`, and of what
 * a scale showed `'498 g weighed'`.
 */
export function countedGrams(
  line: RecipeLine,
  massMg: number,
  weighings: readonly Weighing[],
  context: AmountContext,
): string[] {
  const grams = `${printGrams(massMg)} g`;
  const named = gramsIn(line.text);
  const same = named.filter(({ valueMg }) => valueMg === Number(printGrams(massMg)) * 1000);
  if (named.length > 0 && same.length === named.length) return [];
  if (isWeighed(line, weighings)) {
    return [named.length > 0 || isOtherWeight(line.text, massMg) ? `${grams} weighed` : grams];
  }
  const away = amountApart(line, weighings, context);
  if (named.length === 0 && away === null) return [grams];
  // What is counted in pieces says how many.
  const count = away && !/ g$/.test(away.counted) ? [away.counted] : [];
  return [`counted: ${[...count, grams].join(', ')}`];
}

/**
 * `'120 g tomato sauce (as made, see Tomato sauce)'`, or `'(120 g, as made, made of: 400 g tomatoes, raw; 1 onion)'` of
 * a dish that the text does not have: the foods are in it all the same.
 */
function nestedText(
  line: RecipeLine,
  amount: LineAmount,
  weighings: readonly Weighing[],
  nested: Recipe,
  context: AmountContext,
  dishes: ReadonlyMap<string, string>,
): string {
  const values = new Map([...amount.sources].map(([id, { value }]) => [id, value]));
  const grams =
    amount.massMg && countedGrams(line, evaluate(amount.massMg, values), weighings, context);
  const known = amount.massMg !== null || amount.batches !== null;
  // The dish as it is when it is done, whatever its own ingredients were weighed in.
  const how = grams !== null ? [...grams, 'as made'] : known ? taken(line) : ['not weighed'];
  const title = dishes.get(nested.id);
  const what =
    title === undefined ? `made of: ${madeOf(nested, context, []).join('; ')}` : `see ${title}`;
  return `${line.text} (${[...how, what].join(', ')})`;
}

/** Whether words say themselves in which state their grams hold: 'drained' of '120 g beans, drained'. */
function namesState({ text, state }: RecipeLine): boolean {
  const [read, ...others] = readIngredient(text);
  const word = new RegExp(`\\b${STATE_WORDS[state]}\\b`, 'i');
  return others.length === 0 && read?.state === state && word.test(text);
}

/** Said of grams that are still the planned ones, while what the scale showed waits in a photo. */
function untyped({ photographed }: RecipeLine): string {
  return photographed ? ', as planned: photographed, not typed yet' : '';
}

/** `'1/2 batch'` or `'2 × a ladle'`, where the words name no number of their own. */
function taken(line: RecipeLine): string[] {
  const words = takenWords(line);
  return words === null || NUMBERED.test(line.text) ? [] : [words];
}

/** The words of all that a dish is made of; of a dish within it, what that is made of. */
function madeOf(recipe: Recipe, context: AmountContext, above: readonly string[]): string[] {
  if (above.includes(recipe.id)) return [];
  return recipe.lines.flatMap((line) => {
    const nested = nestedRecipe(line, context);
    return nested ? madeOf(nested, context, [...above, recipe.id]) : [ofWeight(line)];
  });
}

/** Words that name grams say in which state they hold. */
function ofWeight({ text: typed, state }: RecipeLine): string {
  const text = writtenAmount(typed);
  return WEIGHT.test(text) ? `${text}, ${STATE_WORDS[state]}` : text;
}

const WEIGHT = /\d\s*(g|kg|oz|lb)\b/;

const NUMBERED = /[\d½⅓⅔¼¾⅛⅜⅝⅞]/;

/** `2 tbsp` where the words name no number of their own; nothing for grams. */
function household({ text, quantity, unit }: RecipeLine): string[] {
  const words = unit && UNIT_WORDS[unit];
  if (!quantity || !words || NUMBERED.test(text)) return [];
  const several = quantity.high.num > quantity.high.den;
  return [`${quantityText(quantity)} ${words[several ? 1 : 0]}`];
}
