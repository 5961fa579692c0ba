import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { indexAt } from '../words/at-or-behind';
import { lastBefore } from '../words/context';
import type { DishMention } from '../scopes/dishes';
import { endWithNoun, type Quantity } from '../numbers/quantity';
import type { NutrientUnit } from '../statement';
import { only, type Text } from '../words/text';
import { MACRO_KCAL } from '../numbers/macro-energy';
import { isOpen } from '../numbers/open-number';

/** Kilocalories that a dish has at least and at most where nothing but the row says that they are meant. */
const ENERGY = { least: 100, most: 3000 } as const;
/** The same of a day. */
const OF_DAY = { least: 700, most: 6000 } as const;
/** By how much less than that of a macronutrient the energy may be, as labels round both. */
const ROUNDED = 0.95;
/** By which share energy may be off that of all three. */
const FAR = 0.12;

/**
 * Numbers that count nothing by their own words, and energy by the row that they stand in: beside a macronutrient
 * ('four sixty and thirty eight protein'), behind all three where they come to it ('… and that brings you to five oh
 * six'), of a day ('that puts me at sixteen twenty for the day').
 */
export function sayBareEnergy(text: Text, quantities: readonly Quantity[]): void {
  const row: Quantity[] = [];
  quantities.forEach((quantity, index) => {
    const { said } = quantity;
    if (said?.kind === 'nutrient' && quantity.killed === null) row.push(quantity);
    if (!isOpen(text, quantity)) return;
    const before = row.slice(-MACROS);
    if (isSumOf(text, quantity, before)) sayEnergy(quantity, false);
    else if (isBesideMacro(text, quantity, quantities[index + 1])) sayEnergy(quantity, false);
    else if (isOfDay(text, quantity)) sayEnergy(quantity, true);
    else if (isAhead(text, quantity, quantities, index)) sayEnergy(quantity, false);
    if (quantity.said) row.push(quantity);
  });
}

const MACROS = 3;

function sayEnergy(quantity: Quantity, unsure: boolean): void {
  quantity.said = { kind: 'nutrient', nutrient: 'energyKcal', unit: 'kcal' };
  if (unsure) quantity.unsure = true;
}

/** 'four sixty with thirty eight protein': a number right before a macronutrient, and of no less energy than that. */
function isBesideMacro(text: Text, quantity: Quantity, next: Quantity | undefined): boolean {
  const { noun } = next ?? {};
  const factor = noun ? MACRO_KCAL[noun.nutrient] : undefined;
  if (!next || !noun || factor === undefined || next.said?.kind !== 'nutrient') return false;
  if (next.said.scope !== undefined) return false;
  if (noun.from < quantity.end) return false;
  const begin = Math.min(next.begin, noun.from);
  if (begin <= quantity.end) return false;
  if (!only(text, quantity.end, begin, ['joiner', 'filler', 'hedge', 'scope'])) return false;
  return isEnergyOf(quantity, next.high * factor) && !isPriced(text, quantity);
}

const isEnergyOf = ({ low, high }: Quantity, least: number): boolean =>
  low >= ENERGY.least && high <= ENERGY.most && high >= least * ROUNDED;

/** Money and degrees may be said in the same words. */
function isPriced({ marks }: Text, { begin }: Quantity): boolean {
  const paid = marks.before('cost', begin) && !marks.before('comesTo', begin);
  const place = marks.before('place', begin);
  return paid === true || (place !== undefined && !marks.before('comesTo', begin));
}

/** Behind all three macronutrients: the energy that they come to. */
function isSumOf({ marks }: Text, { begin, low, high }: Quantity, row: readonly Quantity[]) {
  const last = row.at(-1);
  if (row.length < MACROS || low !== high || !last || begin - last.end > REACH) return false;
  if (!marks.before('copula', begin) && !marks.before('joiner', begin)) return false;
  let sum = 0;
  const seen = new Set<Nutrient>();
  for (const { said, low: grams } of row) {
    const factor = said?.nutrient === undefined ? undefined : MACRO_KCAL[said.nutrient];
    if (factor === undefined || said?.unit !== 'g' || !said.nutrient) return false;
    seen.add(said.nutrient);
    sum += grams * factor;
  }
  return seen.size === MACROS && Math.abs(sum - low) <= FAR * sum;
}

/** Tokens from the last of the macronutrients to what they come to. */
const REACH = 12;

/** 'sixteen twenty for the day', 'puts me at sixteen twenty': what only the energy of a day comes to. */
function isOfDay({ marks }: Text, { low, high, begin, end }: Quantity): boolean {
  if (low < OF_DAY.least || high > OF_DAY.most) return false;
  const behind = marks.at('scope', end)?.role.scope;
  const before = marks.before('scope', begin)?.role.scope;
  return [behind, before].some((scope) => scope === 'day' || scope === 'soFar');
}

/** Tokens from a number to the calories that are said next; and to its own value with them. */
const AHEAD = 16;
/** Tokens in which another day that was named holds on. */
const OTHER_DAY = 12;

/**
 * 'one bar is one forty two, two of them two eighty four, and the tin seventeen hundred calories': a part and its
 * number, where the next number says what both count; also the same number again, with its noun.
 */
function isAhead(
  text: Text,
  quantity: Quantity,
  quantities: readonly Quantity[],
  index: number,
): boolean {
  const { marks } = text;
  const { begin, end, low, high, money } = quantity;
  if (low < ENERGY.least || high > ENERGY.most) return false;
  if (money !== undefined && text.currency() !== undefined) return false;
  if (lastBefore(text, begin, 'otherDay', OTHER_DAY)) return false;
  const part = marks.at('scope', end) !== undefined || hasPartBefore(text, begin);
  let from = end;
  for (let at = index + 1; at <= index + 3; at += 1) {
    const next = quantities[at];
    if (!next || next.begin - from > AHEAD) return false;
    const energy = next.said?.nutrient === 'energyKcal' && next.noun !== null;
    if (energy && next.killed === null) return part || next.low === low;
    if (next.said !== null && next.said.kind !== 'portions') return false;
    if (next.killed !== null) return false;
    from = next.end;
  }
  return false;
}

/** 'half of it is', 'one bar is', 'twice that is': a part whose verb leads to a number. */
function hasPartBefore({ marks }: Text, begin: number): boolean {
  const verb = marks.before('copula', begin);
  if (!verb) return false;
  for (let at = verb.from; at < begin; at += 1)
    if (marks.before('scope', at) ?? marks.before('times', at)) return true;
  return false;
}

/** Tokens from the name of a dish to its first number, and from one of its numbers to the next. */
const HEAD = 3;
const GAP = 4;

interface Row {
  readonly cells: readonly Quantity[];
}

/**
 * Dishes one after the other, each with its numbers: 'Skyr bowl three sixty, thirty four protein. Wrap five twenty,
 * forty two.' What one row says of its columns holds for all of them; a first column that no row names is energy where
 * every row's is beside a macronutrient, or the text says calories.
 */
export function sayColumns(
  text: Text,
  quantities: readonly Quantity[],
  dishes: readonly DishMention[],
): void {
  let group: Row[] = [];
  for (const row of rowsOf(text, quantities, dishes)) {
    const last = group.at(-1)?.cells.at(-1);
    const first = row.cells[0];
    if (last && first && first.begin - last.end > ROWS) {
      sayGroup(text, group);
      group = [];
    }
    if (group.length < MOST_ROWS) group.push(row);
  }
  sayGroup(text, group);
}

/** Tokens from one row to the next of the same table, and rows of one. */
const ROWS = 16;
const MOST_ROWS = 12;

function sayGroup(text: Text, rows: readonly Row[]): void {
  if (rows.length < 2) return;
  const columns = Math.max(...rows.map(({ cells }) => cells.length));
  const named: ({ readonly nutrient: Nutrient; readonly unit: NutrientUnit } | null)[] = [];
  for (let place = 0; place < columns; place += 1) named.push(columnOf(rows, place));
  named[0] ??= isEnergyColumn(text, rows, named) ? ENERGY_COLUMN : null;
  for (const { cells } of rows)
    cells.forEach((cell, place) => {
      const column = named[place];
      if (!column || cell.said !== null || cell.killed !== null) return;
      const energy = column.nutrient === 'energyKcal';
      const fits = energy
        ? cell.low >= LEAST_CELL && cell.high <= OF_DAY.most
        : cell.high <= MOST_GRAMS;
      const bare = cell.unit === null || cell.unit.unit === column.unit;
      if (fits && bare)
        cell.said = { kind: 'nutrient', nutrient: column.nutrient, unit: column.unit };
    });
}

const ENERGY_COLUMN = { nutrient: 'energyKcal', unit: 'kcal' } as const;
/** Kilocalories of a dish in a row of dishes; grams of a nutrient that a day may have. */
const LEAST_CELL = 40;
const MOST_GRAMS = 600;

/** Numbers behind each name of a dish, or behind a word for the day, up to the next. */
function rowsOf(
  text: Text,
  quantities: readonly Quantity[],
  dishes: readonly DishMention[],
): Row[] {
  const heads = [
    ...dishes.map(({ from, to }) => ({ from, to })),
    ...text.marks.all('scope').filter(({ role }) => role.scope === 'day' || role.scope === 'soFar'),
    ...text.marks.all('thing').filter(({ role }) => role.as === 'meal'),
  ].sort((a, b) => a.from - b.from);
  return heads.flatMap(({ to }, index) => {
    const stop = heads[index + 1]?.from ?? text.tokens.length;
    const cells: Quantity[] = [];
    for (let at = indexAt(quantities, to); at < quantities.length; at += 1) {
      const cell = quantities[at];
      if (!cell || cell.begin >= stop || cell.begin - end(cells, to) > (cells[0] ? GAP : HEAD))
        break;
      if (!isLinked(text, end(cells, to), cell.begin) || !isCell(text, cell)) break;
      cells.push(cell);
    }
    return cells.length > 0 ? [{ cells }] : [];
  });
}

const end = (cells: readonly Quantity[], to: number) => {
  const last = cells.at(-1);
  return last ? endWithNoun(last) : to;
};

const isLinked = (text: Text, from: number, to: number) =>
  only(text, from, to, ['joiner', 'copula', 'filler', 'hedge', 'small', 'so', 'at', 'scope']);

const isCell = (text: Text, cell: Quantity) =>
  isOpen(text, cell) ||
  (cell.said?.kind === 'nutrient' && cell.killed === null) ||
  (cell.said === null && cell.killed === null && cell.unit?.of === 'mass');

/** What the rows that name it say of a column; null where none does, or two differ. */
function columnOf(rows: readonly Row[], place: number) {
  let found: { readonly nutrient: Nutrient; readonly unit: NutrientUnit } | null = null;
  for (const { cells } of rows) {
    const said = cells[place]?.said;
    if (said?.kind !== 'nutrient' || said.nutrient === undefined) continue;
    if (found && found.nutrient !== said.nutrient) return null;
    found ??= { nutrient: said.nutrient, unit: NUTRIENTS[said.nutrient].unit as NutrientUnit };
  }
  return found;
}

/** Whether the first numbers of all rows may be energy, and something says so. */
function isEnergyColumn(text: Text, rows: readonly Row[], named: readonly unknown[]): boolean {
  const plausible = rows.every(({ cells }) => {
    const [first, second] = cells;
    const factor = second?.said?.nutrient && MACRO_KCAL[second.said.nutrient];
    return first !== undefined && isEnergyOf(first, factor ? factor * second.low : 0);
  });
  const calories = isSaidNear(text, rows);
  return plausible && (calories || (named.length > 1 && named[1] !== null));
}

/** Tokens around the rows in which the word for what they count may stand. */
const AROUND = 20;

function isSaidNear({ marks }: Text, rows: readonly Row[]): boolean {
  const first = rows[0]?.cells[0]?.begin ?? 0;
  const last = rows.at(-1)?.cells.at(-1)?.end ?? 0;
  for (let at = Math.max(0, first - AROUND); at <= last + AROUND; at += 1)
    if (marks.at('noun', at)?.role.nutrient === 'energyKcal') return true;
  return false;
}
