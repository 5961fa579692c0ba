import type { FoodState } from '#lib/foods/food';
import type { AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import type { RecipeLine, Weighing } from '#lib/episode/schema';
import { printGrams, printTo } from '#lib/units/print';
import { evaluate, type Term } from '#lib/units/sum-of-products';

export const STATE_WORDS: Readonly<Record<FoodState, string>> = {
  raw: 'raw',
  cooked: 'cooked',
  drained: 'drained',
  dry: 'dry',
  asIs: 'as sold',
};

/**
 * An ingredient as the viewer reads it: the words as written, then grams and the state they hold in.
 * `ingredientText(line, …)` → `'14 oz ground turkey, 93 % (397 g, raw)'`; without grams `'salt to taste (not weighed)'`.
 */
export function ingredientText(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): string {
  const amount = lineAmount(line, weighings, context);
  const valueOf = (terms: readonly Term[]) =>
    evaluate(terms, new Map([...amount.sources].map(([id, { value }]) => [id, value])));
  const state = STATE_WORDS[line.state];
  const peel = line.asBought ? ', with peel and trim' : '';
  if (amount.massMg) {
    const grams = `${printGrams(valueOf(amount.massMg))} g`;
    const said = line.text.startsWith(`${grams} `) ? '' : `${grams}, `;
    return `${line.text} (${said}${state}${peel})`;
  }
  if (amount.volumeMl) return `${line.text} (${printTo(valueOf(amount.volumeMl), 1)} ml, ${state})`;
  return `${line.text} (not weighed)`;
}
