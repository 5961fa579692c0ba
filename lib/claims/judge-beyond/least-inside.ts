import type { LeastPublished } from '#lib/claims/edit-facts';
import { ENGLISH } from '#lib/claims/english/english';
import { foodAt, stemsOf } from '#lib/claims/words/foods';
import { foodsIn } from '#lib/claims/words/foods-in';
import { fitOf, ingredientNames } from '#lib/claims/judge-beyond/ingredient-names';
import type { Around } from '#lib/claims/judge-beyond/words-around';
import { saidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import { tokenize } from '#lib/claims/words/tokens';

type Inside = Statement & { readonly kind: 'insideTemperature' };

/**
 * Whether a number, as it was said, lets the food stay below a published least. What is only said to be over a number
 * is that number; "up to" and "under" the least itself ask for less than it.
 * @example isBelow(upTo165F, poultry) // true
 */
export function isBelow(statement: Inside, least: LeastPublished): boolean {
  const { low, hedge } = statement;
  const degrees = leastIn(least, statement.unit);
  if (isUpTo(statement) || hedge === 'almost') return low <= degrees;
  const alone = { ...statement, high: low, hedge: 'none' } as const;
  return saidInterval(alone, { spoken: false, about: () => 0 }).to < degrees;
}

/** Whether only the most is said: that says nothing of the least. */
export function isUpTo({ hedge }: Pick<Inside, 'hedge'>): boolean {
  return hedge === 'under' || hedge === 'atMost';
}

/** A published least in the unit of a statement, as it is published in whole degrees Fahrenheit. */
export function leastIn({ milliC, fahrenheit }: LeastPublished, unit: Inside['unit']): number {
  return unit === 'F' ? fahrenheit : milliC / 1000;
}

/**
 * The published leasts that hold for what a sentence speaks of: of those foods that it or the titles of steps name, where
 * the clause of the number itself names one of them; else all, since then nobody knows of which food it is.
 * @param titles of the steps that the number is held against
 * @example leastFor(chickenAndCod, around('the cod should read 63'), words, ['Roast it all']) // that of the cod
 */
export function leastFor(
  least: readonly LeastPublished[],
  { before, behind }: Pick<Around, 'before' | 'behind'>,
  words: string,
  titles: readonly string[],
): readonly LeastPublished[] {
  if (least.length < 2) return least;
  const { clauses: between, beside } = ENGLISH.judging;
  const clauses = [
    (before.split(between).at(-1) ?? '').replace(beside, ''),
    words,
    (behind.split(between)[0] ?? '').replace(beside, ''),
  ];
  if (namedIn(least, clauses).length === 0) return least;
  return namedIn(least, [before, words, behind, ...titles]);
}

/** Those of foods that texts name. */
function namedIn(
  least: readonly LeastPublished[],
  texts: readonly string[],
): readonly LeastPublished[] {
  const said = texts.flatMap(foodWords);
  return least.filter(({ ingredients }) =>
    ingredients.some(({ text, foods }) => {
      const tables = foods.map((name) => ({ name }));
      const names = ingredientNames({ text }, tables, ENGLISH);
      return said.some((food) => fitOf(food, names) > 0);
    }),
  );
}

/** The foods that a text names, each by the words of its name. */
function foodWords(text: string): string[][] {
  const tokens = tokenize(text);
  const food = (at: number) => foodAt(tokens, at, ENGLISH);
  return foodsIn({ food }, 0, tokens.length).map(({ name }) => stemsOf(name, ENGLISH));
}
