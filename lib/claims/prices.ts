import { lastBefore, markBefore, sentenceEnd } from './context';
import type { Quantity, Said } from './quantity';
import { only, type Text } from './text';

/** Tokens around a price in which a thing that no one eats makes it no statement. */
const GEAR_BEFORE = 8;
const GEAR_BEHIND = 6;

/** What a number of money says: of the dish, or of a food whose price it is. */
export function priceOf(text: Text, quantity: Quantity): Said | null {
  const { unit } = quantity;
  if (unit?.of !== 'money') return bareMoney(text, quantity);
  const gear =
    lastBefore(text, quantity.begin, 'gear', GEAR_BEFORE) ??
    text.marks.firstIn(
      'gear',
      quantity.end,
      Math.min(quantity.end + GEAR_BEHIND, sentenceEnd(text, quantity.from)),
    );
  if (gear || quantity.high === 0 || text.marks.at('trapBehind', quantity.end)) {
    quantity.killed = 'of something else';
    return null;
  }
  quantity.low = round(quantity.low * unit.factor);
  quantity.high = round(quantity.high * unit.factor);
  return { kind: 'price', unit: moneyOf(text, unit), ...ofFood(text, quantity) };
}

/** Cents are those of the money that the text names, pence always those of pounds. */
function moneyOf(text: Text, { unit, factor }: { readonly unit: string; readonly factor: number }) {
  const named = text.currency();
  const pounds = [...text.language.moneyUnits.values()];
  const cents = factor < 1 && !pounds.includes(unit);
  return cents && named !== undefined && !pounds.includes(named) ? named : unit;
}

/** 'two fifty a head, that's dollars', and 'the salmon was eleven ninety nine' where the text has prices. */
function bareMoney(text: Text, quantity: Quantity): Said | null {
  const { money, unit, noun, end } = quantity;
  if (money === undefined || unit !== null || noun !== null) return null;
  const named = text.marks.firstIn('unit', end, end + 7);
  if (named?.role.of === 'money' && !isCounted(text, named.from)) {
    quantity.low = quantity.high = money;
    return { kind: 'price', unit: named.role.unit, ...ofFood(text, quantity) };
  }
  const food = foodBefore(text, quantity);
  const currency = food === null ? undefined : text.currency();
  if (food === null || currency === undefined) return null;
  quantity.low = quantity.high = money;
  return { kind: 'price', unit: currency, scope: 'ingredient', food };
}

/** Whether a number stands before a unit. */
const isCounted = ({ tokens, language }: Text, at: number) =>
  tokens[at - 1]?.kind === 'number' || language.numbers.cardinals.has(tokens[at - 1]?.folded ?? '');

const round = (value: number) => Number(value.toFixed(4));

/** 'the salmon was', '59p a tin' of beans, '$4 for the salmon'. */
function ofFood(text: Text, quantity: Quantity): Partial<Said> {
  const food = foodBefore(text, quantity) ?? foodBeside(text, quantity);
  if (food !== null) return { scope: 'ingredient', food };
  const { tokens, language } = text;
  const next = tokens[quantity.end]?.folded ?? '';
  const { marks } = text;
  const small = marks.at('small', quantity.end) && !marks.at('joiner', quantity.end);
  const forFood = small && next.length <= 3;
  const behind = forFood ? foodOf(text, quantity.end + 1) : null;
  return behind !== null && !language.numbers.article.has(next)
    ? { scope: 'ingredient', food: behind }
    : {};
}

/** 'salmon $6.50', 'the eggs 2 dollars'. */
function foodBeside(text: Text, { begin }: Quantity): string | null {
  for (let at = Math.max(0, begin - 4); at < begin; at += 1) {
    const food = text.food(at);
    if (food?.to === begin && !isDish(text, food.name)) return food.name;
  }
  return null;
}

function foodOf(text: Text, at: number): string | null {
  const food = text.food(at) ?? text.food(at + 1);
  return food && food.from - at <= 1 ? food.name : null;
}

/**
 * The food that is the subject right before a number, with a copula or a word of cost between: 'the salmon was'.
 * Null where it is the dish's own name.
 */
export function foodBefore(text: Text, quantity: Quantity): string | null {
  const link = markBefore(text, quantity, 'cost', 1) ?? markBefore(text, quantity, 'copula', 1);
  const { subjects, aloneAfter } = text.language.claims;
  const first = text.tokens[link?.from ?? -1]?.folded ?? '';
  // 'with the cheese it's 590' is no longer about the cheese.
  if (subjects.has(first) || aloneAfter.has(first)) return null;
  if (!link || !only(text, link.to, quantity.begin, ['filler', 'hedge', 'small'])) return null;
  for (let at = Math.max(0, link.from - 4); at < link.from; at += 1) {
    const food = text.food(at);
    const part = text.marks.before('scope', link.from) ?? text.marks.at('noun', food?.from ?? -1);
    if (food && text.marks.before('not', food.from)) return null;
    if (food?.to === link.from && !part && !isDish(text, food.name)) return food.name;
  }
  return null;
}

/** Whether a food has the last word of a dish's title, and no word that the title has not. */
export function isDish({ context, language }: Text, name: string): boolean {
  const titles = [...(context.dishes ?? []), ...(context.dish === undefined ? [] : [context.dish])];
  const words = name.split(/[ -]/).map(language.singular);
  return titles.some((title) => {
    const all = title
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .map(language.singular);
    return words.at(-1) === all.at(-1) && words.every((word) => all.includes(word));
  });
}
