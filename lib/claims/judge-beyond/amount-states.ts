import { ENGLISH } from '#lib/claims/english/english';
import { onceFor } from '#lib/claims/once-for';
import type { Statement } from '#lib/claims/statement';
import type { AmountContext } from '#lib/episode/context';
import { stateClass } from '#lib/episode/eaten-amount';
import { weighedAmount, writtenAmount, type LineAmount } from '#lib/episode/line-amount';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';

/** Of which state an amount is said; null where the words do not say. */
export type SaidState = 'raw' | 'cooked' | null;

/** Text on each side of an amount in which its state is looked for, in UTF-16 units. */
const BEFORE = 16;
const BEHIND = 24;
/**
 * Whether the words of an amount, else those beside it, say that it is of the raw or of the cooked food. How many pieces there are is the same
 * of both.
 * @example stateSaid(said150, '150 g of dry oats') // 'raw'
 */
export function stateSaid(
  { start, end, unit }: Pick<Statement & { readonly kind: 'amount' }, 'start' | 'end' | 'unit'>,
  text: string,
): SaidState {
  if (unit === 'piece') return null;
  const words = ENGLISH.judging;
  const own = stateIn(text.slice(start, end));
  if (own !== null) return own;
  const before =
    text
      .slice(Math.max(0, start - BEFORE), start)
      .split(words.otherAmount)
      .at(-1) ?? '';
  const behind = text.slice(end, end + BEHIND).split(words.otherAmount)[0] ?? '';
  return stateIn(`${before}${text.slice(start, end)}${behind}`);
}

/** The one state that words name. */
function stateIn(words: string): SaidState {
  const cooked = ENGLISH.judging.cooked.test(words);
  const raw = ENGLISH.judging.raw.test(words);
  return cooked === raw ? null : raw ? 'raw' : 'cooked';
}

/** How much an ingredient is, by what was weighed of it and what is written. */
export interface LineAmounts {
  readonly written: LineAmount;
  readonly weighed: LineAmount | null;
  /** Weighed once it was cooked. */
  readonly cooked: LineAmount | null;
  /** What counts of it as it stands among the ingredients. */
  readonly eaten: LineAmount;
  /** What is known of it in a state; null where its grams are of the other one. */
  readonly inState: (said: SaidState) => LineAmount | null;
}

/** The amounts of a recipe’s ingredients, each worked out once. */
export const amountsOf = onceFor((recipe: Recipe, amounts: AmountContext) => {
  const kept = new Map<RecipeLine, LineAmounts>();
  return (line: RecipeLine): LineAmounts => {
    const known = kept.get(line);
    if (known) return known;
    const food = amounts.foods.get(line.foodId ?? '') ?? null;
    const written = writtenAmount(line, food, amounts);
    const weighed = weighedAmount(line, recipe.weighings, 'raw', amounts);
    const cooked = weighedAmount(line, recipe.weighings, 'cooked', amounts);
    const eaten = weighed ?? written;
    const own = stateClass(line.state === 'asIs' ? (food?.version.state ?? 'asIs') : line.state);
    const inState = (said: SaidState) => {
      if (said === null || own === said) return eaten;
      if (said === 'cooked') return cooked;
      return own === 'any' ? eaten : null;
    };
    const made = { written, weighed, cooked, eaten, inState };
    kept.set(line, made);
    return made;
  };
});
