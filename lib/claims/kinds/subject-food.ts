import { markBefore } from '../words/context';
import { isDish } from '../words/dish-word';
import type { FoodSpan } from '../words/foods';
import type { Quantity } from '../numbers/quantity';
import type { Mark } from '../words/marks';
import { holdsFood } from '../words/holds-food';
import { only, type Text } from '../words/text';

/**
 * The food that is the subject right before a number, with a copula or a word of cost between: 'the salmon was'.
 * Null where it is the dish's own name.
 */
export function subjectFood(text: Text, quantity: Quantity): string | null {
  const link = markBefore(text, quantity, 'cost', 1) ?? markBefore(text, quantity, 'copula', 1);
  const { subjects, aloneAfter, persons } = text.language.claims;
  const first = text.tokens[link?.from ?? -1]?.folded ?? '';
  // 'with the cheese it's 590' is no longer about the cheese.
  if (subjects.has(first) || aloneAfter.has(first) || persons.has(first)) return null;
  if (!link || !only(text, link.to, quantity.begin, ['filler', 'hedge', 'small'])) return null;
  for (let at = Math.max(0, link.from - 4); at < link.from; at += 1) {
    const food = text.food(at);
    const part = text.marks.before('scope', link.from) ?? text.marks.at('noun', food?.from ?? -1);
    const { denied } = text.language.claims;
    const no = food && denied.has(text.tokens[food.from - 1]?.folded ?? '');
    if (food && (no || text.marks.before('not', food.from))) return null;
    // 'the entire batch of this ice cream works out at'
    const of = food && text.marks.before('ofThem', food.from);
    if (of && text.marks.before('scope', of.from)) return null;
    // 'With bun: 308 kcal' is of the dish with it.
    const colon = text.tokens[link.from]?.text === ':';
    const along = food && text.marks.before('use', food.from);
    // 'a bowl with rice is' likewise.
    if (along && (colon || text.marks.before('scope', along.from))) return null;
    // 'Weeknight cod: 27 g of protein': what it is called.
    const title = text.tokens[link.from]?.text === ':' && food && food.from > 0 && link.from <= 4;
    if (title) return null;
    // 'the cheese on top is eighty calories'
    const where =
      food &&
      link.from - food.to <= 3 &&
      only(text, food.to, link.from, ['small', 'into', 'alone']);
    if (food && (isAllOf(text, food) || isServed(text, food))) return null;
    if (food && food.to <= link.from && where && !part && !isDish(text, food.name))
      return food.name;
  }
  return null;
}

/** 'one serving of the stuffed peppers': the dish by another name, of which a part is meant; not 'a serving of rice'. */
function isServed({ marks, tokens, language: { numbers } }: Text, { from }: FoodSpan): boolean {
  for (let at = from - 2; at >= from - SERVED; at -= 1) {
    if (!numbers.of.has(tokens[at]?.folded ?? '')) continue;
    const part = marks.before('scope', at)?.role.scope;
    return part === 'portion' && numbers.pointers.has(tokens[at + 1]?.folded ?? '');
  }
  return false;
}

/** Tokens from 'of the' to the name behind it. */
const SERVED = 4;

/** Tokens from what says all or half of it to the name: 'the entire batch of this ice cream'. */
const OF_IT = 6;

/** Whether a name is that of a dish, of which all or a part is meant: 'the whole pie’s', 'half the pan of brownies'. */
export function isAllOf(text: Text, { from, to }: Pick<FoodSpan, 'from' | 'to'>): boolean {
  const { marks, tokens } = text;
  const { of, pointers } = text.language.numbers;
  const own = marks.lastIn('scope', from - OF_IT, to);
  if (own && own.to >= to && isAll(own)) return true;
  for (let at = from - 1; at > from - OF_IT; at -= 1) {
    if (!of.has(tokens[at]?.folded ?? '')) continue;
    const part = marks.before('scope', at);
    // 'one serving of the stuffed peppers'; one of rice may be all that there is of it.
    const the = pointers.has(tokens[at + 1]?.folded ?? '') && part?.role.scope === 'portion';
    if (!part || holdsFood(text, part) || !(isAll(part) || the)) return false;
    return !(['copula', 'joiner', 'unit'] as const).some((cat) => marks.firstIn(cat, at + 1, from));
  }
  return false;
}

const isAll = ({ role }: Mark<'scope'>) => role.scope === 'whole' || role.scope === 'half';
