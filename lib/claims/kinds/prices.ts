import { lastBefore, sentenceEnd } from '../words/context';
import { foodBeside, ofFood } from './price-foods';
import { isPaidFor } from './paid-for';
import type { Quantity, Said } from '../numbers/quantity';
import { subjectFood } from './subject-food';
import { isDish } from '../words/dish-word';
import { only, type Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Tokens around a price in which a thing that no one eats makes it no statement. */
const GEAR_BEFORE = 8;
const GEAR_BEHIND = 6;

/** What a number of money says: of the dish, or of a food whose price it is. */
export function priceOf(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { unit } = quantity;
  if (unit?.of !== 'money') return bareMoney(text, quantity, before);
  const gear = gearBefore(text, quantity) ?? gearBehind(text, quantity);
  const { end } = quantity;
  const other = text.marks.at('trapBehind', end) ?? text.marks.at('than', end);
  if (gear || quantity.high === 0 || other || isPerMeasure(text, end)) {
    quantity.killed = 'of something else';
    return null;
  }
  quantity.low = round(quantity.low * unit.factor);
  quantity.high = round(quantity.high * unit.factor);
  const counted = ofCounted(text, quantity, before);
  const food = counted ?? ofFood(text, quantity);
  // 'the cafe down the road wants seven pounds fifty'
  const others = text.marks.lastIn('charge', quantity.begin - CHARGED, quantity.begin);
  if (others && food.food === undefined) quantity.killed ??= 'of something else';
  if (quantity.killed !== null) return null;
  // '$3.40 mine, $11 takeout'
  const bought = text.marks.at('usual', end);
  if (bought && text.tokens[bought.to]?.kind !== 'word')
    return { kind: 'price', unit: moneyOf(text, unit), scope: 'compared' };
  return { kind: 'price', unit: moneyOf(text, unit), ...food };
}

/** 'two ninety nine a pound', '£6 per kilo': what so much of it costs in the shop. */
function isPerMeasure({ marks, tokens, language }: Text, end: number): boolean {
  const per = marks.at('per', end)?.to;
  const one = language.numbers.article.has(tokens[end]?.folded ?? '') || tokens[end]?.text === '/';
  const unit = marks.at('unit', per ?? end + 1)?.role;
  return (per !== undefined || one) && (unit?.of === 'mass' || unit?.unit === 'l');
}

/** Tokens from a counted food to its price; and as many as are bought, not cooked. */
const COUNTED = 5;
const BOUGHT = 12;

/** 'two dozen eggs where I am is seven bucks', 'a can of beans costs ninety cents': the price of the food that is counted. */
function ofCounted(
  { marks, food }: Text,
  { begin }: Quantity,
  before: Quantity | undefined,
): Partial<Said> | null {
  if (before?.said?.kind !== 'amount' || before.said.food === undefined) return null;
  const link =
    marks.before('copula', begin) ?? marks.before('cost', begin) ?? marks.before('at', begin);
  if (!link || link.from < before.end || begin - before.end > COUNTED) return null;
  for (let at = before.end; at < link.from; at += 1)
    if (marks.at('joiner', at) ?? marks.at('so', at) ?? food(at)) return null;
  if (before.said.unit === 'piece' && before.low >= BOUGHT) before.killed ??= 'bought';
  return { scope: 'ingredient', food: before.said.food };
}

/** Tokens from what others ask to how much that is. */
const CHARGED = 3;

/** Tokens from one price to another without its money. */
const NEAR = 8;
/** Tokens before a pronoun in which a thing that no one eats is what it stands for. */
const PRONOUN = 24;

/** A thing that no one eats behind a price; '$2 air fryer tofu' is eaten. */
function gearBehind(text: Text, { from, end }: Quantity) {
  const to = Math.min(end + GEAR_BEHIND, sentenceEnd(text, from));
  const gear = text.marks.firstIn('gear', end, to);
  return gear && text.food(gear.to) ? undefined : gear;
}

/** A thing that no one eats before a price, which is no part of the dish: 'the pot was' may be the whole of it. */
function gearBefore(text: Text, { begin }: Quantity) {
  const { marks, language, tokens } = text;
  const link = marks.before('copula', begin) ?? marks.before('cost', begin);
  const first = link && tokens[link.from]?.folded;
  const pronoun = [first, tokens[(link?.from ?? 0) - 1]?.folded].some(
    (word) => word !== undefined && language.claims.subjects.has(word),
  );
  const far = pronoun ? marks.lastIn('gear', begin - PRONOUN, begin) : undefined;
  // 'six burritos, freezer, done … and it costs me 70p': named in passing, and bought by nobody.
  const bought = far && (begin - far.to <= GEAR_BEFORE || tokens[far.from - 1]?.kind === 'word');
  const near = bought ? far : pronoun ? undefined : lastBefore(text, begin, 'gear', GEAR_BEFORE);
  // 'on camera'
  const gear = near && marks.before('who', near.to) ? undefined : near;
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
  const { unit, noun } = quantity;
  if (isPerMeasure(text, quantity.end)) return null;
  const money = quantity.money ?? inHundredths(text, quantity);
  const pence =
    unit === null && noun === null
      ? (priceToo(text, quantity, before) ??
        saidAgain(text, quantity, before) ??
        barePence(text, quantity, before) ??
        outOfPrice(text, quantity, before))
      : null;
  if (pence) return pence;
  if (money === undefined || unit !== null || noun !== null) return null;
  const said = moneySaid(text, quantity, before);
  if (said) quantity.low = quantity.high = money;
  return said;
}

/** 'eleven dollars for the chicken and four for the rice': whole money of another food, joined to a price. */
function priceToo(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { begin, end, low, high, fraction } = quantity;
  if (before?.said?.kind !== 'price' || before.said.scope !== 'ingredient' || fraction) return null;
  const joined = begin - before.end <= NEAR && text.marks.before('joiner', begin) !== undefined;
  const food = joined && low === high ? foodFor(text, end) : null;
  const { unit } = before.said;
  return food === null ? null : { kind: 'price', unit, scope: 'ingredient', food };
}

/** What a number that may be money says, where the text says that it is. */
function moneySaid(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { end } = quantity;
  const named = text.marks.firstIn('unit', end, end + 7);
  const pounds = text.language.moneyUnits.get(named?.role.unit ?? '');
  const unitSaid = named?.role.of === 'money' ? named.role.unit : pounds;
  if (named && unitSaid !== undefined && !isCounted(text, named.from))
    return { kind: 'price', unit: unitSaid, ...ofFood(text, quantity) };
  if (isPaid(text, quantity) || text.marks.at('worth', end)) {
    const food = ofFood(text, quantity);
    return { kind: 'price', unit: text.currency() ?? 'unknown', ...food };
  }
  if (isPaidFor(text, quantity, before))
    return { kind: 'price', unit: text.currency() ?? 'unknown', ...ofFood(text, quantity) };
  const currency = text.currency();
  if (currency === undefined) return null;
  // 'two ninety nine for the pork shoulder', where the text has prices
  const paidFor = foodFor(text, end);
  if (paidFor !== null)
    return { kind: 'price', unit: currency, scope: 'ingredient', food: paidFor };
  // 'the beans were eighty nine cents and the tomatoes one twenty nine'
  const goesOn = before?.said?.kind === 'price' && quantity.begin - before.end <= NEAR;
  const food = subjectFood(text, quantity) ?? (goesOn ? foodBeside(text, quantity) : null);
  if (food !== null) return { kind: 'price', unit: currency, scope: 'ingredient', food };
  // 'so a tuna melt for one forty four'
  const lead = goesOn && text.marks.before('serveTitle', quantity.begin);
  return lead && endsPlainly(text, end) ? { kind: 'price', unit: currency } : null;
}

/** Tokens from a word for paying to what is paid. */
const PAID = 7;

/** 'I paid six fifty', 'price per portion, one eighty', 'cost per tub, let's say two twenty'; no calories that it costs. */
function isPaid(text: Text, { begin, end }: Quantity): boolean {
  const { marks } = text;
  const paid = marks.lastIn('paid', begin - PAID, begin);
  if (!paid || !only(text, paid.to, begin, PAID_LINKS) || !endsPlainly(text, end)) return false;
  const energy = marks.lastIn('noun', begin - ENERGY_REACH, begin);
  return energy === undefined || energy.to <= paid.from - PAID;
}

/** What may stand between: 'cost per tub, let's say', 'price of one portion is'. */
const PAID_LINKS = [
  'scope',
  'joiner',
  'copula',
  'hedge',
  'filler',
  'small',
  'comesTo',
  'lead',
  'per',
  'thing',
  'pack',
] as const;

/** Tokens before a price in which a nutrient may be what it costs. */
const ENERGY_REACH = 20;

/** Whether nothing that is counted follows. */
const endsPlainly = ({ marks, food, tokens }: Text, end: number) =>
  food(end) === null &&
  marks.at('trapBehind', end) === undefined &&
  (marks.at('thing', end) === undefined || marks.at('scope', end) !== undefined) &&
  tokens[end]?.kind !== 'number';

/** '1.80', as only money is written. */
export const inHundredths = ({ tokens }: Text, { digits, low, high, to }: Quantity) =>
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
  const food = again ? null : (subjectFood(text, quantity) ?? foodBeside(text, quantity));
  if (food === null && !again) return null;
  quantity.low = quantity.high = round(low / 100);
  const { unit, scope } = before.said;
  return food === null
    ? { kind: 'price', unit, ...(scope ? { scope } : {}) }
    : { kind: 'price', unit, scope: 'ingredient', food };
}

/** 'sixty cents. sixty.': the same number once more, without its money. */
function saidAgain(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { low, high, begin, end } = quantity;
  if (before?.said?.kind !== 'price' || before.unit?.of !== 'money' || low !== high) return null;
  if (begin - before.end > AGAIN || !endsPlainly(text, end)) return null;
  const value = low * before.unit.factor;
  if (round(value) !== before.low || text.marks.at('thing', end)) return null;
  quantity.low = quantity.high = before.low;
  return before.said;
}

/** Tokens from a price to the same number again. */
const AGAIN = 2;

/** 'eleven pounds sixty, the mince was four of that': so much whole money of the price before. */
function outOfPrice(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { low, high, end, fraction } = quantity;
  if (before?.said?.kind !== 'price' || low !== high || fraction) return null;
  const money = quantity.money ?? low;
  if (!text.marks.at('ofThem', end) || money >= before.low) return null;
  const food = subjectFood(text, quantity);
  if (food === null) return null;
  quantity.low = quantity.high = money;
  return { kind: 'price', unit: before.said.unit, scope: 'ingredient', food };
}

/** A food behind 'for the'. */
function foodFor(text: Text, end: number): string | null {
  const lead = text.marks.at('serveTitle', end);
  const the = lead && text.marks.at('filler', lead.to);
  const food = the ? text.food(the.to) : null;
  return food && food.from === the?.to && !isDish(text, food.name) ? food.name : null;
}

/** Whether a number stands before a unit, or 'a' before one that may be of weight: 'two ninety nine a pound'. */
const isCounted = ({ tokens, language, marks }: Text, at: number) => {
  const before = tokens[at - 1];
  const one = language.numbers.article.has(before?.folded ?? '');
  return saysNumber(before, language) || (one && marks.at('unit', at)?.role.of === 'mass');
};

const round = (value: number) => Number(value.toFixed(4));
