import { STATE_WORDS } from '#lib/foods/state-words';
import type { AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import type { LineUnit, RecipeLine, Weighing } from '#lib/episode/schema';
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
 * An ingredient as the viewer reads it: the words as written, then grams and the state they hold in, and the
 * household amount where the words have none.
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
    const stated = line.text.startsWith(`${grams} `) || line.text.includes(`(${grams})`);
    const said = stated ? [] : [grams];
    return `${line.text} (${[...household(line), ...said, `${state}${peel}`].join(', ')})`;
  }
  if (amount.volumeMl) {
    const ml = `${printTo(valueOf(amount.volumeMl), 1)} ml`;
    return `${line.text} (${[...household(line), ml, state].join(', ')})`;
  }
  return `${line.text} (not weighed)`;
}

/** `2 tbsp` where the words name no number of their own; nothing for grams. */
function household({ text, quantity, unit }: RecipeLine): string[] {
  const words = unit && UNIT_WORDS[unit];
  if (!quantity || !words || /[\d½⅓⅔¼¾⅛⅜⅝⅞]/.test(text)) return [];
  const several = quantity.high.num > quantity.high.den;
  return [`${quantityText(quantity)} ${words[several ? 1 : 0]}`];
}
