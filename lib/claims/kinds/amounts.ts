import { lastBefore, markBefore } from '../words/context';
import { foodBehind, isLine, unknownFood } from './amount-foods';
import { isListed } from './counted-pieces';
import { foodAt } from '../words/foods';
import { foodsIn } from '../words/foods-in';
import { lateFood } from './late-foods';
import { isLeanShare } from './lean-shares';
import { phraseAt } from '../words/phrases';
import { isDish } from '../words/dish-word';
import type { Quantity, Said } from '../numbers/quantity';
import { only, type Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** The amount of a food, or the weight of what is finished, that a number says; null where it says none. */
export function amountOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  const { unit } = quantity;
  // 'Three-bean chilli': what a dish is called.
  if (unit === null && text.tokens[quantity.to]?.hyphened) return null;
  const counted = unit === null || unit.of === 'container';
  if (unit !== null && unit.of !== 'mass' && unit.of !== 'volume' && unit.of !== 'container')
    return null;
  if (unit?.unit === 'µg' || quantity.high === 0 || isBlocked(text, quantity)) return null;
  if (unit === null && isLeanShare(text, quantity.begin, quantity.end)) {
    quantity.killed = 'shares of lean and fat';
    return null;
  }
  // 'soy and honey, two tablespoons of each'
  const each = text.marks.at('scope', quantity.end + 1)?.role.link === 'counted';
  if (each && text.language.numbers.of.has(text.tokens[quantity.end]?.folded ?? '')) return null;
  const piece = ofEachPiece(text, quantity, before);
  if (piece) return piece;
  const pack = packOf(text, quantity);
  if (pack === 'bought') {
    quantity.killed = 'size of a pack';
    return null;
  }
  const { of } = text.language.numbers;
  const ofIt = of.has(text.tokens[quantity.end]?.folded ?? '');
  if (unit === null && ofIt) return someOf(text, quantity);
  if (text.marks.at('gear', quantity.end) ?? text.marks.before('per', quantity.begin)) return null;
  // '2 tins chickpeas (400 g each)'
  const inBrackets = text.tokens[quantity.begin - 1]?.text === '(' && unit?.of === 'mass';
  if (inBrackets && before?.unit?.of === 'container' && before.end === quantity.begin - 1) {
    quantity.killed = 'size of a pack';
    return null;
  }
  const first = adjacentFood(text, quantity, before);
  const food = foodBehind(text, quantity, unit !== null);
  // 'noodles 200 grams tofu': of which, nobody can say.
  if (first !== null && food?.adjacent && !ofIt) return null;
  const said = {
    kind: 'amount' as const,
    unit: unit === null || unit.of === 'container' ? 'piece' : unit.unit,
  };
  const restated = food && !ofIt && unit !== null ? againInOther(text, quantity, before) : null;
  if (restated !== null) return { ...said, food: restated };
  if (food) {
    // 'two oat squares'
    if (unit === null && food.adjacent && text.marks.at('thing', food.to)) return null;
    // 'four dumplings is a serving'
    const is = unit === null ? text.marks.at('copula', food.to) : undefined;
    if (is && text.marks.at('scope', is.to)) return null;
    if (
      unit === null &&
      ((isDish(text, food.name) &&
        !isLine(text, quantity) &&
        !isListed(text, quantity, food.to, before)) ||
        quantity.high > 100)
    )
      return null;
    if (unit === null && (!isCount(quantity) || text.context.form === 'title')) return null;
    if (unit === null && food.adjacent && isManyOf(text, quantity, food)) return null;
    if (food.to > quantity.end && food.adjacent) quantity.end = food.to;
    return { ...said, food: food.name, ...partOf(text, quantity) };
  }
  if (unit === null) return null;
  if (first !== null && unit.of !== 'container') return { ...said, food: first };
  const line =
    !text.spoken && unit.of !== 'container' ? unknownFood(text, quantity.end, true) : null;
  if (line && before?.said?.kind === 'amount') {
    quantity.end = line.to;
    return { ...said, food: line.name };
  }
  const same = sameAsBefore(text, quantity, before);
  if (same !== null) return { ...said, food: same };
  const late = lateFood(text, quantity, before);
  if (late !== null) return { ...said, food: late };
  if (counted && !pack) return null;
  // 'then six balls, ninety grams each'
  if (text.marks.at('scope', quantity.end)?.role.link === 'counted') return null;
  const used =
    pack === 'used' ||
    isOfThem(text, quantity) ||
    markBefore(text, quantity, 'use', 2) ||
    poured(text, quantity);
  const name = used ? (lastNamed(text, quantity) ?? titleFood(text)) : null;
  return name === null ? null : { ...said, food: name };
}

/** Tokens from a food to an amount of it that is put in. */
const NAMED = 20;

/** The food that was named last before an amount: 'the oats, I put 80 grams in'. */
const lastNamed = (text: Text, { begin }: Quantity) =>
  foodsIn(text, begin - NAMED, begin).at(-1)?.name ?? null;

/** Grams from which on a piece of a food is weighed; below, a nutrient may be meant. */
const HEAVY = 50;

/** 'two chicken breasts at a hundred and eighty grams each': what each of the pieces weighs. */
function ofEachPiece(
  { marks, tokens }: Text,
  { begin, end, unit, noun, low }: Quantity,
  before: Quantity | undefined,
): Said | null {
  if (unit?.of !== 'mass' || noun || before?.said?.kind !== 'amount' || low < HEAVY) return null;
  const { food, unit: counted } = before.said;
  if (counted !== 'piece' || food === undefined || begin - before.end !== 1) return null;
  const linked = marks.before('at', begin) ?? marks.before('lead', begin);
  if (!linked && tokens[begin - 1]?.text !== ',') return null;
  if (marks.at('scope', end)?.role.link !== 'counted') return null;
  return { kind: 'amount', unit: unit.unit, scope: 'each', food };
}

/** 'each patty is a quarter pound of beef': what goes into one of them. */
function partOf({ marks }: Text, { begin }: Quantity): Partial<Said> {
  const copula = marks.before('copula', begin);
  const scope = copula && marks.before('scope', copula.from)?.role.scope;
  return scope === 'each' || scope === 'portion' ? { scope } : {};
}

/** 'two of the peppers'; 'one of them' is a turn of speech. */
function someOf(text: Text, quantity: Quantity): Said | null {
  const the = text.marks.at('filler', quantity.end + 1);
  const food = the ? text.food(the.to) : null;
  if (!food || quantity.low < 2 || !isCount(quantity) || isDish(text, food.name)) return null;
  quantity.end = food.to;
  return { kind: 'amount', unit: 'piece', food: food.name };
}

/** The food right before a number, which is not that of the amount before it: 'tofu 280 grams'. */
function adjacentFood(
  text: Text,
  { begin, unit }: Quantity,
  before: Quantity | undefined,
): string | null {
  if (unit === null || before?.end === begin) return null;
  for (let at = Math.max(0, begin - 4); at < begin; at += 1) {
    const food = text.food(at);
    const noun = food && text.marks.at('noun', food.from);
    if (food?.to === begin && !noun) return food.name;
  }
  return null;
}

/** 'two hundred grams of it', where a food was named later than a nutrient. */
function isOfThem(text: Text, { begin, end }: Quantity): boolean {
  return (
    text.marks.at('ofThem', end) !== undefined && !text.marks.lastIn('noun', begin - 12, begin)
  );
}

/** 'I weighed 225 g into this one': what goes in, not what is finished. */
function poured({ marks }: Text, { end }: Quantity): boolean {
  return marks.firstIn('into', end, end + 6) !== undefined;
}

/** The one food that the title of the dish names before its last word, where the text names none. */
function titleFood(text: Text): string | null {
  const words = text.title.tokens.slice(0, -1);
  const food = (at: number) => foodAt(words, at, text.language);
  const [found, ...others] = foodsIn({ food }, 0, words.length);
  return found && others.length === 0 ? found.name : null;
}

/** From so many on a food that is counted is said in the plural, and none is named by a nutrient. */
const MANY = 12;

/** 'tuna ninety cheese about thirty', 'thirty four protein, caesar wrap': so many of what nobody counts. */
function isManyOf(
  { tokens, language, marks }: Text,
  { high, end }: Quantity,
  { to }: { readonly to: number },
): boolean {
  const last = tokens[to - 1]?.folded ?? '';
  return high > MANY && (language.singular(last) === last || marks.at('noun', end) !== undefined);
}

const isCount = ({ low, high, fraction }: Quantity) =>
  fraction || (Number.isInteger(low) && Number.isInteger(high));

function isBlocked(text: Text, { begin }: Quantity): boolean {
  if (text.marks.before('correct', begin)) return false;
  const { tokens, language } = text;
  // 'I have not opened a pint of milk'
  const denied = text.marks.before('not', begin - 1);
  if (denied && !text.marks.at('filler', begin - 1)) return true;
  // 'a piece of cake'
  const { sayings } = language.foods;
  if (phraseAt(sayings, tokens, begin) ?? phraseAt(sayings, tokens, begin + 1)) return true;
  for (let back = 1; back <= 3; back += 1) {
    const found = phraseAt(language.foods.blockers, tokens, begin - back);
    if (found?.next === begin && !language.numbers.or.has(tokens[begin - 1]?.folded ?? '')) {
      return (
        text.marks.before('hedge', begin) === undefined &&
        text.marks.before('use', begin) === undefined &&
        text.marks.before('serveTitle', begin) === undefined
      );
    }
  }
  return false;
}

/** Whether a number is the size of a pack, bought or used up: 'a 400 gram tub', 'the whole 400 gram tub goes in'. */
function packOf(text: Text, { begin, unitEnd, unit }: Quantity): 'bought' | 'used' | null {
  const pack =
    unit === null || unit.of === 'container' ? undefined : text.marks.at('pack', unitEnd);
  if (!pack) return null;
  const all =
    lastBefore(text, begin, 'allOfIt', 4) ?? text.marks.firstIn('allOfIt', pack.to, pack.to + 6);
  return all ? 'used' : 'bought';
}

/** 'one teaspoon of olive oil, so five millilitres', whatever food is named next. */
function againInOther(text: Text, quantity: Quantity, before: Quantity | undefined): string | null {
  const to = before?.end ?? quantity.begin;
  const linked =
    text.marks.firstIn('so', to, quantity.begin) ?? text.marks.firstIn('which', to, quantity.begin);
  if (before?.said?.unit === quantity.unit?.unit) return null;
  const same = linked ? sameAsBefore(text, quantity, before) : null;
  const pointed = before && isPointedBack(text, before.end, quantity.begin);
  return same ?? (pointed ? (before.said?.food ?? null) : null);
}

/** Tokens of what is said of a food before 'that's' and its other amount. */
const SAID_OF_IT = 7;

/** 'a tin of mackerel in brine, drained, that's 95 grams': no other food in between. */
function isPointedBack(text: Text, from: number, begin: number): boolean {
  const { marks, tokens, language, sentences } = text;
  const that = marks.before('copula', begin);
  if (!that || that.from - from > SAID_OF_IT || that.from < from) return false;
  if (sentences.of[from] !== sentences.of[that.from]) return false;
  const word = tokens[that.from]?.folded ?? '';
  const { subjects } = language.claims;
  if (!subjects.has(word) && !subjects.has(word.replace(/s$/, ''))) return false;
  return foodsIn(text, from, that.from).every(({ to }) =>
    language.foods.uncounted.has(language.singular(tokens[to - 1]?.folded ?? '')),
  );
}

/** Tokens of an aside about how a food is weighed. */
const ASIDE = 7;

/** Token behind 'which I weigh,' right behind an amount; the token itself without such an aside. */
function behindAside({ tokens, marks, language }: Text, from: number): number {
  const words = tokens.slice(from + 1, from + ASIDE).findIndex(({ text }) => text === ',');
  if (tokens[from]?.text !== ',' || words < 0) return from;
  const to = from + 1 + words;
  const number = tokens.slice(from, to).some((token) => saysNumber(token, language));
  const weighed = marks.firstIn('weigh', from, to) ?? marks.firstIn('self', from, to);
  return weighed && !number ? to + 1 : from;
}

/** The food of the amount just before, where this is the same in another unit. */
function sameAsBefore(text: Text, quantity: Quantity, before: Quantity | undefined): string | null {
  if (before?.said?.kind !== 'amount' || before.said.food === undefined) return null;
  const from = behindAside(text, before.end);
  const gap = quantity.begin - from;
  const links = ['joiner', 'so', 'hedge', 'which', 'copula', 'filler', 'scope'] as const;
  return gap <= 4 && gap > 0 && only(text, from, quantity.begin, links) ? before.said.food : null;
}
