import type { AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import { nestedRecipe } from '#lib/episode/made-from';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { STATE_WORDS } from '#lib/foods/state-words';
import { countedGrams, ingredientText } from '#lib/publish/ingredient-text';
import type { CardRow } from '#lib/publish/cards/card';
import { printGrams, printTo } from '#lib/units/print';
import { evaluate, type Term } from '#lib/units/sum-of-products';

/**
 * The ingredients of a dish, each with its grams and the state in which they hold, or why there are none. One that is
 * made from a dish says so in its words, as in the description.
 * @param titles what each recipe is called that the same episode has as a dish
 */
export function ingredientRows(
  recipe: Recipe,
  context: AmountContext,
  titles: ReadonlyMap<string, string>,
): CardRow[] {
  return recipe.lines.map((line) => {
    if (nestedRecipe(line, context)) {
      return { words: ingredientText(line, recipe.weighings, context, titles), amount: '' };
    }
    const amount = amountWords(line, recipe.weighings, context);
    // Words that begin with the same grams say them once.
    const [, grams = ''] = /^([\d.]+ (?:g|ml))/.exec(amount) ?? [];
    const rest =
      grams !== '' && line.text.startsWith(`${grams} `) ? line.text.slice(grams.length + 1) : '';
    return { words: rest === '' ? line.text : rest, amount };
  });
}

function amountWords(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): string {
  const { massMg, volumeMl, sources } = lineAmount(line, weighings, context);
  const valueOf = (terms: readonly Term[]) =>
    evaluate(terms, new Map([...sources].map(([id, { value }]) => [id, value])));
  const state = STATE_WORDS[line.state];
  const peel = line.asBought ? ', with peel and trim' : '';
  const waits = line.photographed ? ', as planned' : '';
  if (massMg) {
    const grams = valueOf(massMg);
    const [told] = countedGrams(line, grams, weighings, context);
    return `${told ?? `${printGrams(grams)} g`} ${state}${peel}${waits}`;
  }
  if (volumeMl) return `${printTo(valueOf(volumeMl), 1)} ml ${state}${waits}`;
  return 'not weighed';
}
