import { isDish } from '../words/dish-word';
import { isOpen } from '../numbers/open-number';
import type { FoodSpan } from '../words/foods';
import { foodsIn } from '../words/foods-in';
import { listedFoods } from './listed-foods';
import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Tokens from one amount of a list to the next. */
const GAP = 12;
/** Nobody counts so many of a food, and from so many on of one that is not said in the plural. */
const BEYOND_COUNT = 100;
const MEASURED = 10;
const MOST_PIECES = 12;
const MOST_GRAMS = 3000;
/** Tokens before a list in which a nutrient may be what its numbers are of. */
const TOPIC = 40;
/** Tokens behind a list in which its unit may be said of all. */
const UNIT_BEHIND = 8;

interface Entry {
  readonly quantity: Quantity;
  readonly food: FoodSpan;
  readonly of: boolean;
  readonly side: 'behind' | 'before';
}

/**
 * Numbers of a list of foods that are said without their unit: 'five hundred flour, three twenty water, ten salt', 'two
 * tablespoons of soy and one of honey', 'ground almonds, fifty'. In a list where grams are said, or a number that nobody
 * counts, they are grams, and unsure unless grams are said.
 */
export function sayBareMeasures(text: Text, quantities: readonly Quantity[]): void {
  let list: (Entry | Quantity)[] = [];
  let last: Quantity | undefined;
  let salted: Entry | undefined;
  const listed = listedFoods(text, quantities);
  const close = () => {
    sayList(text, list);
    list = [];
  };
  for (const quantity of quantities) {
    // 'ten of salt and seven of yeast': salt went in as well.
    const ends = last && counts(last) && list.at(-1) !== salted;
    if (last && (quantity.begin - last.end > GAP || ends)) close();
    const own = listed.get(quantity);
    if (own !== undefined) setListed(quantity, own);
    const entry =
      own === undefined ? entryOf(text, quantity, last) : listedEntry(text, quantity, own);
    salted = entry ?? undefined;
    if (entry) list.push(entry);
    else if (quantity.said?.kind === 'amount' && quantity.killed === null) list.push(quantity);
    last = quantity;
  }
  close();
}

/** An amount of the food before it, not of the one behind; of none where nobody can say. */
function setListed(quantity: Quantity, food: FoodSpan | null): void {
  const { unit, unitEnd, said } = quantity;
  quantity.end = Math.min(quantity.end, unitEnd);
  quantity.noun = null;
  const measured = unit?.of === 'mass' || unit?.of === 'volume';
  if (food && measured) quantity.said = { kind: 'amount', unit: unit.unit, food: food.name };
  else if (said?.kind === 'amount' || said?.kind === 'nutrient') quantity.said = null;
}

function listedEntry(text: Text, quantity: Quantity, food: FoodSpan | null): Entry | null {
  const open = quantity.unit === null && food !== null && !isDish(text, food.name);
  return open ? { quantity, food, of: false, side: 'before' } : null;
}

/** A nutrient or a price ends a list of amounts. */
const counts = ({ said }: Quantity) => said?.kind === 'nutrient' || said?.kind === 'price';

const isEntry = (one: Entry | Quantity): one is Entry => 'side' in one;

/** A number without unit beside a food: right before it, before 'of', or behind it and a pause. */
function entryOf(text: Text, quantity: Quantity, last: Quantity | undefined): Entry | null {
  const { unit, killed, said, fraction, low, high, to } = quantity;
  if (unit || killed !== null || fraction || low !== high) return null;
  if (text.marks.at('thing', to) || text.marks.at('trapBehind', to)) return null;
  const { numbers, foods } = text.language;
  const of = numbers.of.has(text.tokens[to]?.folded ?? '');
  const at = of ? to + 1 : to;
  const food = text.food(at);
  const plain = food && foods.plain.has(text.tokens[at]?.folded ?? '');
  if (food && (food.from === at || plain) && !isDish(text, food.name)) {
    const piece = said === null || (said.kind === 'amount' && said.unit === 'piece');
    // 'ten of salt' is salt, and no nutrient, in a list of foods.
    const salt = said?.kind === 'nutrient' && quantity.noun?.from === food.from;
    return piece || salt ? { quantity, food, of, side: 'behind' } : null;
  }
  if (of || said !== null || !isOpen(text, quantity)) return null;
  const before = pausedFood(text, quantity, last?.end ?? 0);
  return before ? { quantity, food: before, of, side: 'before' } : null;
}

/** Tokens from a food to its number, with words for how it is between: 'chicken thigh, boneless, 740'. */
const ASIDE = 6;

/** The food right before a number and a mark: 'ground almonds, fifty'. */
export function pausedFood(
  text: Text,
  { begin, end, low }: Quantity,
  from: number,
): FoodSpan | null {
  const { tokens, marks, language } = text;
  const mark = /^[,:]$/.test(tokens[begin - 1]?.text ?? '');
  // 'honey one, vinegar two'
  const next = tokens[end];
  const ends = next?.kind !== 'word' || language.numbers.and.has(next.folded);
  if (!mark && (!ends || low >= MEASURED)) return null;
  const found = foodsIn(text, Math.max(from, begin - ASIDE), begin).at(-1);
  if (!found || isDish(text, found.name) || (!mark && found.to < begin)) return null;
  const between = [found.to, begin] as const;
  const other = marks.firstIn('copula', ...between) ?? marks.firstIn('noun', ...between);
  return other ? null : found;
}

function sayList(text: Text, list: readonly (Entry | Quantity)[]): void {
  const entries = list.filter(isEntry);
  if (entries.length === 0) return;
  const grams = list.some((one) => !isEntry(one) && one.said?.unit === 'g');
  const all = isNamedBehind(text, entries.at(-1)?.quantity.end ?? 0);
  const named = grams || all;
  const beyond = entries.filter(isBeyond);
  const behind = beyond.some(({ side }) => side === 'behind');
  const weighed = entries.length > 1 && beyond.length > 0 && !isOfNutrient(text, list);
  const spooned = list.some((one) => !isEntry(one) && isSpoon(one.said?.unit));
  if (!named && !behind && !weighed && !spooned && !entries.some(({ of }) => of)) return;
  if (!named && list.length < 2) return;
  let measure: string | null = null;
  for (const one of list) {
    if (!isEntry(one)) {
      measure = one.said?.unit ?? null;
      continue;
    }
    const unit = unitOf(text, one, { named: named || weighed, all, measure });
    if (unit === null) continue;
    const { quantity, food, side } = one;
    quantity.said = { kind: 'amount', unit, food: food.name };
    quantity.noun = null;
    if (side === 'behind') quantity.end = Math.max(quantity.end, food.to);
    if (!named && unit === 'g') quantity.unsure = true;
  }
}

const isSpoon = (unit: string | null | undefined) =>
  unit !== null && unit !== undefined && !['g', 'piece', 'kg', 'ml'].includes(unit);

/** Whether a nutrient is said around a list: 'rice, one eighty, beef, one twenty' may be calories. */
function isOfNutrient({ marks }: Text, list: readonly (Entry | Quantity)[]): boolean {
  const all = list.map((one) => (isEntry(one) ? one.quantity : one));
  const [from, to] = [all[0]?.begin ?? 0, all.at(-1)?.end ?? 0];
  const noun =
    marks.lastIn('noun', from - TOPIC, from) ?? marks.firstIn('noun', to, to + TOPIC / 2);
  return noun !== undefined;
}

const isBeyond = ({ quantity: { low } }: Entry) => low >= BEYOND_COUNT && low <= MOST_GRAMS;

/** What a number of the list is measured in; null where it may be a count. */
function unitOf(
  text: Text,
  { quantity: { low }, food, of, side }: Entry,
  list: { readonly named: boolean; readonly all: boolean; readonly measure: string | null },
): string | null {
  if (low > MOST_GRAMS) return null;
  // 'two tablespoons of soy and one of honey'
  const spoons = isSpoon(list.measure);
  if (of && low < MEASURED) return spoons ? list.measure : list.named ? 'g' : null;
  const last = text.tokens[food.to - 1]?.folded ?? '';
  const plural = text.language.singular(last) !== last;
  if (side === 'before') {
    // 'soy sauce two tablespoons, honey one'; 'eggs, two'
    if (low < MEASURED && spoons && !plural) return list.measure;
    if (low <= MOST_PIECES && plural) return 'piece';
    return list.named && low > 1 ? 'g' : null;
  }
  if (low >= BEYOND_COUNT) return 'g';
  if (low < MEASURED) return list.all && !plural && low > 1 ? 'g' : null;
  return of || !plural || low >= BEYOND_COUNT / 4 ? 'g' : null;
}

/** 'everything in grams', 'all grams' behind the list. */
function isNamedBehind(text: Text, end: number): boolean {
  const unit = text.marks.firstIn('unit', end, end + UNIT_BEHIND);
  if (unit?.role.of !== 'mass' || unit.role.unit !== 'g') return false;
  const before = text.tokens[unit.from - 1];
  const { hundred, thousand } = text.language.numbers;
  const word = before?.folded ?? '';
  return !saysNumber(before, text.language) && !hundred.has(word) && !thousand.has(word);
}
