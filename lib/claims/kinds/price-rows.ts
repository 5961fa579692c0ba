import { foodBeside } from './price-foods';
import { inHundredths } from './prices';
import type { Quantity } from '../numbers/quantity';
import { subjectFood } from './subject-food';
import type { Text } from '../words/text';

/** Tokens from one price of a row to the next. */
const GAP = 10;
/** Whole numbers below these say whole money, or either; from the second on cents, as no food costs so much. */
const WHOLE = 5;
const CENTS = 20;
const MOST_CENTS = 99;
/** Money that rounding of each part and a word like 'about' may make of their sum. */
const ROUNDED = 0.011;
const ABOUT = 0.03;
/** Ways of reading a row that are tried at most. */
const MOST_WAYS = 64;

interface Item {
  readonly quantity: Quantity;
  readonly food: string | null;
  /** What it may be in money; one value where its money is said. */
  readonly values: readonly number[];
}

/**
 * Prices in a row of foods, of which not each says its money: 'eggs two forty, flour sixty, butter one eighty, so four
 * dollars eighty', 'beans a dollar, rice fifty cents, so one and a half for the pot'. What may be cents or whole money is
 * told by what all come to; where it can't be told it is left out.
 */
export function sayPriceRows(text: Text, quantities: readonly Quantity[]): void {
  let row: Item[] = [];
  let end = -Infinity;
  for (const quantity of quantities) {
    const item = itemOf(text, quantity);
    if (quantity.begin - end > GAP || (item === null && endsRow(quantity))) {
      sayRow(row);
      row = [];
    }
    if (item) row.push(item);
    ({ end } = quantity);
  }
  sayRow(row);
}

/** What is no price and lets no bare number behind it be one. */
function endsRow({ said, killed, unit, noun }: Quantity): boolean {
  if (killed !== null) return false;
  if (said === null) return unit !== null || noun !== null;
  return !(said.kind === 'portions' || (said.kind === 'amount' && said.unit === 'piece'));
}

function itemOf(text: Text, quantity: Quantity): Item | null {
  const { said, killed, unit, noun, low, high } = quantity;
  if (killed !== null || low !== high) return null;
  if (said?.kind === 'price') {
    const food = said.food ?? unknownBefore(text, quantity);
    return { quantity, food, values: [low] };
  }
  const piece = said?.kind === 'amount' && said.unit === 'piece' && isMoney(quantity);
  if (unit !== null || noun !== null || (said !== null && !piece)) return null;
  const { marks } = text;
  if (marks.at('trapBehind', quantity.to) ?? marks.at('unit', quantity.to)) return null;
  const food = subjectFood(text, quantity) ?? foodBeside(text, quantity);
  if (quantity.killed !== null) {
    quantity.killed = null;
    return null;
  }
  if (piece && food === null) return null;
  const counted = marks.at('thing', quantity.to) ?? text.food(quantity.to);
  if (counted && !isMoney(quantity)) return null;
  const written = inHundredths(text, quantity);
  const values = written === undefined ? valuesOf(quantity, food === null) : [written];
  return values.length > 0 ? { quantity, food, values } : null;
}

/** 'feta one fifty, filo two pounds': a word between a mark and a price, by a name that is in no table. */
function unknownBefore({ tokens, marks, language }: Text, { begin }: Quantity): string | null {
  const word = tokens[begin - 1];
  if (word?.kind !== 'word' || !/^[,.]$/.test(tokens[begin - 2]?.text ?? '')) return null;
  const known = marks.any(begin - 1) || language.foods.plain.has(word.folded);
  const paid = ['scope', 'cost', 'thing'] as const;
  if (known || paid.some((category) => marks.before(category, begin))) return null;
  return language.singular(word.folded);
}

/** What no one counts of a food. */
const isMoney = ({ money, low }: Quantity) =>
  money !== undefined || low >= CENTS || !Number.isInteger(low);

/** What a number without its money may be; `sum`: it is of no food, so that it may be what others come to. */
function valuesOf({ money, low, fraction }: Quantity, sum: boolean): number[] {
  if (money !== undefined) return [money];
  if (fraction) return low > 1 && low < CENTS ? [low] : [];
  if (!Number.isInteger(low) || low < 1 || low > MOST_CENTS) return [];
  if (low < WHOLE) return [low];
  return low < CENTS || sum ? [low / 100, low] : [low / 100];
}

function sayRow(row: readonly Item[]): void {
  const currencies = new Set(row.flatMap(({ quantity: { said } }) => said?.unit ?? []));
  const [unit] = currencies;
  const own = row.filter(({ quantity: { said } }) => said?.kind === 'price');
  if (own.length === 0 || currencies.size > 1 || unit === undefined || unit === 'unknown') return;
  const last = row.findLastIndex(({ food }) => food !== null);
  const parts = row.slice(0, last + 1).filter(({ food }) => food !== null);
  if (parts.length === 0) return;
  const total = row[last + 1];
  const sure = total && parts.length > 1 ? summed(parts, total) : null;
  if (sure && total) {
    parts.forEach((part, index) => say(part, sure[index], unit));
    say(total, sure.at(-1), unit);
    return;
  }
  // Without their sum only what can be nothing else, beside another price of a food.
  const priced = parts.some(({ quantity: { said } }) => said?.food !== undefined);
  if (!priced) return;
  for (const part of parts) {
    const [value] = part.values;
    const said = part.quantity.said?.kind === 'price';
    if (said || (part.values.length === 1 && isMoney(part.quantity))) say(part, value, unit);
  }
}

/** The one way of reading parts and their sum so that it comes out; null where none is, or several are. */
function summed(parts: readonly Item[], total: Item): readonly number[] | null {
  const all = [...parts, total];
  const ways = all.reduce((count, { values }) => count * values.length, 1);
  if (ways > MOST_WAYS) return null;
  let found: readonly number[] | null = null;
  for (let way = 0; way < ways; way += 1) {
    let rest = way;
    const chosen = all.map(({ values }) => {
      const value = values[rest % values.length] ?? 0;
      rest = Math.floor(rest / values.length);
      return value;
    });
    const sum = chosen.at(-1) ?? 0;
    const left = chosen.slice(0, -1).reduce((sofar, value) => sofar - value, sum);
    const soft = all.some(({ quantity }) => quantity.hedge !== 'none') ? ABOUT * sum : 0;
    if (Math.abs(left) > ROUNDED * parts.length + soft) continue;
    if (found) return null;
    found = chosen;
  }
  return found;
}

function say({ quantity, food }: Item, value: number | undefined, unit: string): void {
  if (quantity.said?.kind === 'price') {
    if (food !== null) quantity.said = { ...quantity.said, scope: 'ingredient', food };
    return;
  }
  if (value === undefined) return;
  quantity.low = quantity.high = value;
  quantity.end = quantity.to;
  quantity.said = {
    kind: 'price',
    unit,
    ...(food === null ? {} : { scope: 'ingredient' as const, food }),
  };
}
