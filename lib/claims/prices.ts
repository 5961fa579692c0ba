import { lastBefore, markBefore, sentenceEnd } from './context';
import type { FoodSpan } from './foods';
import { holdsFood } from './scope-mentions';
import type { Quantity, Said } from './quantity';
import { only, type Text } from './text';

/** Tokens around a price in which a thing that no one eats makes it no statement. */
const GEAR_BEFORE = 8;
const GEAR_BEHIND = 6;

/** What a number of money says: of the dish, or of a food whose price it is. */
export function priceOf(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { unit } = quantity;
  if (unit?.of !== 'money') return bareMoney(text, quantity, before);
  const gear =
    gearBefore(text, quantity) ??
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

/** Tokens from one price to another without its money. */
const NEAR = 8;
/** Tokens before a pronoun in which a thing that no one eats is what it stands for. */
const PRONOUN = 24;

/** A thing that no one eats before a price, which is no part of the dish: 'the pot was' may be the whole of it. */
function gearBefore(text: Text, { begin }: Quantity) {
  const { marks, language, tokens } = text;
  const link = marks.before('copula', begin) ?? marks.before('cost', begin);
  const first = link && tokens[link.from]?.folded;
  const pronoun = [first, tokens[(link?.from ?? 0) - 1]?.folded].some(
    (word) => word !== undefined && language.claims.subjects.has(word),
  );
  const gear = lastBefore(text, begin, 'gear', pronoun ? PRONOUN : GEAR_BEFORE);
  if (!gear) return undefined;
  const whole = marks.lastIn('scope', gear.from - 2, gear.to)?.role.scope === 'whole';
  if (whole) return undefined;
  if (begin - gear.to <= GEAR_BEFORE) return gear;
  for (let at = gear.to; at < begin; at += 1) if (text.food(at)) return undefined;
  return gear;
}

/** Cents are those of the money that the text names, pence always those of pounds. */
function moneyOf(text: Text, { unit, factor }: { readonly unit: string; readonly factor: number }) {
  const named = text.currency();
  const pounds = [...text.language.moneyUnits.values()];
  const cents = factor < 1 && !pounds.includes(unit);
  return cents && named !== undefined && !pounds.includes(named) ? named : unit;
}

/** 'two fifty a head, that's dollars', and 'the salmon was eleven ninety nine' where the text has prices. */
function bareMoney(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { unit, noun, end } = quantity;
  const money = quantity.money ?? inHundredths(text, quantity);
  const pence = unit === null && noun === null ? barePence(text, quantity, before) : null;
  if (pence) return pence;
  if (money === undefined || unit !== null || noun !== null) return null;
  const named = text.marks.firstIn('unit', end, end + 7);
  const pounds = text.language.moneyUnits.get(named?.role.unit ?? '');
  const unitSaid = named?.role.of === 'money' ? named.role.unit : pounds;
  if (named && unitSaid !== undefined && !isCounted(text, named.from)) {
    quantity.low = quantity.high = money;
    return { kind: 'price', unit: unitSaid, ...ofFood(text, quantity) };
  }
  // 'two ninety nine for the pork shoulder', where the text has prices
  const paidFor = currencyFor(text, end);
  if (paidFor) {
    quantity.low = quantity.high = money;
    return { kind: 'price', unit: paidFor.unit, scope: 'ingredient', food: paidFor.food };
  }
  // 'the beans were eighty nine cents and the tomatoes one twenty nine'
  const goesOn = before?.said?.kind === 'price' && quantity.begin - before.end <= NEAR;
  const food = foodBefore(text, quantity) ?? (goesOn ? foodBeside(text, quantity) : null);
  const currency = food === null ? undefined : text.currency();
  if (food === null || currency === undefined) return null;
  quantity.low = quantity.high = money;
  return { kind: 'price', unit: currency, scope: 'ingredient', food };
}

/** '1.80', as only money is written. */
const inHundredths = ({ tokens }: Text, { digits, low, high, to }: Quantity) =>
  digits && low === high && /^\d+\.\d\d$/.test(tokens[to - 1]?.text ?? '') ? low : undefined;

/** Most cents that are said as such. */
const MOST_CENTS = 99;

/**
 * 'chickpeas eighty nine p, tomatoes fifty five': cents go on in a row of prices, each beside its food; and 'seventy
 * pence or maybe seventy five' of the same.
 */
function barePence(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const cents = before?.unit?.of === 'money' && before.unit.factor < 1;
  const { low, high, begin, end } = quantity;
  if (before?.said?.kind !== 'price' || !cents || low !== high || quantity.parts) return null;
  if (!Number.isInteger(low) || low < 5 || low > MOST_CENTS || begin - before.end > NEAR)
    return null;
  if (text.food(end) ?? text.marks.at('thing', end) ?? text.marks.at('trapBehind', end))
    return null;
  const or = text.language.numbers.either.has(text.tokens[before.end]?.folded ?? '');
  const again = or && only(text, before.end + 1, begin, ['hedge', 'filler']);
  const food = again ? null : (foodBefore(text, quantity) ?? foodBeside(text, quantity));
  if (food === null && !again) return null;
  quantity.low = quantity.high = round(low / 100);
  const { unit, scope } = before.said;
  return food === null
    ? { kind: 'price', unit, ...(scope ? { scope } : {}) }
    : { kind: 'price', unit, scope: 'ingredient', food };
}

/** A food behind 'for the', and the currency of the text. */
function currencyFor(text: Text, end: number) {
  const lead = text.marks.at('serveTitle', end);
  const the = lead && text.marks.at('filler', lead.to);
  const food = the ? text.food(the.to) : null;
  const unit = food?.from === the?.to ? text.currency() : undefined;
  return food && unit !== undefined && !isDish(text, food.name) ? { unit, food: food.name } : null;
}

/** Whether a number stands before a unit. */
const isCounted = ({ tokens, language }: Text, at: number) =>
  tokens[at - 1]?.kind === 'number' || language.numbers.cardinals.has(tokens[at - 1]?.folded ?? '');

const round = (value: number) => Number(value.toFixed(4));

/** 'the salmon was', '59p a tin' of beans, '$4 for the salmon'. */
function ofFood(text: Text, quantity: Quantity): Partial<Said> {
  const subject = foodBefore(text, quantity);
  if (subject !== null) return { scope: 'ingredient', food: subject };
  const { tokens, language, marks } = text;
  const next = tokens[quantity.end]?.folded ?? '';
  const small = marks.at('small', quantity.end) && !marks.at('joiner', quantity.end);
  const of = language.numbers.of.has(next);
  const forFood = of || (small && next.length <= 3 && !language.numbers.article.has(next));
  const food =
    (forFood ? foodOf(text, quantity.end + 1) : null) ??
    foodBeside(text, quantity) ??
    dearFood(text, quantity);
  return food !== null ? { scope: 'ingredient', food } : {};
}

/** 'salmon $6.50', 'the eggs 2 dollars'. */
function foodBeside(text: Text, { begin }: Quantity): string | null {
  // 'potatoes, a dollar twenty', 'beans – 65p', 'I got the beans for fifty cents'
  const comma = /^[,:=–—-]$/.test(text.tokens[begin - 1]?.text ?? '');
  const paid = text.context.form !== 'title' && text.marks.before('serveTitle', begin);
  const linked = comma || (paid && paid.from === begin - 1);
  const to = linked ? begin - 1 : begin;
  for (let at = Math.max(0, to - 4); at < to; at += 1) {
    const food = text.food(at);
    const starts = at === 0 || text.tokens[at - 1]?.kind !== 'word';
    if (food?.to === to && (!comma || starts) && !isDish(text, food.name)) return food.name;
  }
  return null;
}

/** Tokens from a food to its price where words between say how dear it is. */
const DEAR = 16;

/** 'the sausages are the expensive bit, fair, three quid'. */
function dearFood(text: Text, { begin, end }: Quantity): string | null {
  const dear = text.marks.lastIn('dear', begin - DEAR, begin);
  const part = text.marks.at('scope', end);
  if (!dear || (part && part.role.scope !== 'each')) return null;
  let found: string | null = null;
  for (let at = Math.max(0, dear.from - DEAR / 2); at < dear.from;) {
    const food = text.food(at);
    if (food && food.to <= dear.from && !isDish(text, food.name)) found = food.name;
    at = food ? food.to : at + 1;
  }
  return found;
}

function foodOf(text: Text, at: number): string | null {
  const food = text.food(at) ?? text.food(at + 1);
  return food && food.from - at <= 1 && !isDish(text, food.name) ? food.name : null;
}

/**
 * The food that is the subject right before a number, with a copula or a word of cost between: 'the salmon was'.
 * Null where it is the dish's own name.
 */
export function foodBefore(text: Text, quantity: Quantity): string | null {
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
    if (food && colon && text.marks.before('use', food.from)) return null;
    // 'Weeknight cod: 27 g of protein': what it is called.
    const title = text.tokens[link.from]?.text === ':' && food && food.from > 0 && link.from <= 4;
    if (title) return null;
    // 'the cheese on top is eighty calories'
    const where =
      food && link.from - food.to <= 3 && only(text, food.to, link.from, ['small', 'into']);
    if (food && isAllOf(text, food)) return null;
    if (food && food.to <= link.from && where && !part && !isDish(text, food.name))
      return food.name;
  }
  return null;
}

/** Tokens from what says all or half of it to the name: 'the entire batch of this ice cream'. */
const OF_IT = 6;

/** Whether a name is that of a dish, of which all or half is meant: 'the whole pie’s', 'half the pan of brownies'. */
export function isAllOf(text: Text, { from, to }: Pick<FoodSpan, 'from' | 'to'>): boolean {
  const { marks } = text;
  const part = marks.lastIn('scope', from - OF_IT, to);
  if (part?.role.scope !== 'whole' && part?.role.scope !== 'half') return false;
  if (part.to >= to) return true;
  const { of } = text.language.numbers;
  const led = of.has(text.tokens[part.to]?.folded ?? '');
  return led && !holdsFood(text, part) && only(text, part.to + 1, from, ['small', 'filler']);
}

/** Whether a food has the last word of a dish's title, and no word that the title has not. */
export function isDish({ context, language }: Text, name: string): boolean {
  const titles = [...(context.dishes ?? []), ...(context.dish === undefined ? [] : [context.dish])];
  const words = name.split(/[ -]/).map(language.singular);
  const { and } = language.numbers;
  return titles.some((title) => {
    const all = title
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .map(language.singular);
    // 'steak and eggs': one of two foods that it names.
    if (words.length === 1 && and.has(all.at(-2) ?? '')) return false;
    return words.at(-1) === all.at(-1) && words.every((word) => all.includes(word));
  });
}
