import Fraction from 'fraction.js';
import type { LikelyRange } from '#lib/claims/said-interval';
import type { AmountUnit } from '#lib/claims/statement';
import type { AmountContext } from '#lib/episode/context';
import { measureUnit, type LineAmount } from '#lib/episode/line-amount';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { LineUnit, RecipeLine } from '#lib/episode/recipe-schema';
import { measureKind, spreadOf } from '#lib/episode/spreads';
import type { Food, FoodMeasure } from '#lib/foods/food';
import { quickBounds } from '#lib/units/quick-bounds';
import type { Sources, Term } from '#lib/units/sum-of-products';
import {
  isMassUnit,
  isVolumeUnit,
  MILLIGRAMS,
  MILLILITRES,
  toMillilitres,
  type VolumeUnit,
} from '#lib/units/units';

/**
 * How much an ingredient is in the unit of a statement, with its likely range; several where the food has several
 * measures of that unit that the words do not choose between; none where it cannot be had in that unit.
 * @example 240 g of oats whose cup weighs 80 g, in cups: 3, likely 2.7 to 3.3
 */
export function lineRanges(
  line: RecipeLine,
  amount: LineAmount,
  { unit, words }: { readonly unit: AmountUnit; readonly words: string },
  context: AmountContext,
): readonly LikelyRange[] {
  const food = context.foods.get(line.foodId ?? '') ?? null;
  if (unit === 'piece') {
    const counted = countOf(line) ?? writtenCount(line);
    if (counted) return [counted];
    const pieces = (food?.measures ?? []).filter((measure) => measureUnit(measure) === null);
    const said = pieces.filter(({ name }) => isSaid(name, words));
    return perMeasure(amount, said.length > 0 ? said : pieces, context, 'piece');
  }
  if (isMassUnit(unit)) return rangesOf(amount.massMg, amount.sources, MILLIGRAMS[unit].valueOf());
  if (amount.volumeMl && !amount.massMg) return byVolume(amount, unit, food);
  if (amount.volumeMl && line.planned === null) return byVolume(amount, unit, food);
  const measured = byOwnMeasures(amount, unit, food, context);
  if (measured.length > 0) return measured;
  const written = asWritten(line, unit, food);
  return written.length > 0
    ? written
    : readIngredient(line.text)
        .slice(0, 1)
        .flatMap((read) => asWritten(read, unit, food));
}

/** As it is written, where the food has no measure by which its grams could be told in spoons or cups. */
function asWritten(
  { quantity, unit: own }: Pick<RecipeLine, 'quantity' | 'unit'>,
  unit: VolumeUnit,
  food: Food | null,
): LikelyRange[] {
  if (!quantity || own === null || !isVolumeUnit(own)) return [];
  const label = food?.kind === 'label';
  const times =
    toMillilitres(new Fraction(1), own, label) / toMillilitres(new Fraction(1), unit, label);
  const [low, high] = [quantity.low, quantity.high].map(({ num, den }) => (num / den) * times);
  return low === undefined || high === undefined ? [] : [{ value: (low + high) / 2, low, high }];
}

function rangesOf(terms: readonly Term[] | null, sources: Sources, per: number): LikelyRange[] {
  if (!terms) return [];
  const { value, likelyLow, likelyHigh } = quickBounds(terms, sources);
  return [{ value: value / per, low: likelyLow / per, high: likelyHigh / per }];
}

/** How many are written, where the ingredient is counted: however much they weighed, there are so many. */
function countOf({ quantity, unit }: Pick<RecipeLine, 'quantity' | 'unit'>): LikelyRange | null {
  if (!quantity || !(unit === 'piece' || unit === 'pack' || unit === 'serving')) return null;
  const [low, high] = [quantity.low, quantity.high].map(({ num, den }) => num / den);
  if (low === undefined || high === undefined) return null;
  return { value: (low + high) / 2, low, high };
}

/** Whether it is known how many pieces an ingredient is, so that no weight of one is needed. */
export const isCounted = (line: RecipeLine): boolean =>
  (countOf(line) ?? writtenCount(line)) !== null;

/** How many the words of an ingredient say beside its grams: '1 large zucchini, about 320 g'. */
function writtenCount({ text }: RecipeLine): LikelyRange | null {
  const [read, ...others] = readIngredient(text);
  return read && others.length === 0 ? countOf(read) : null;
}

/** Whether a measure's name is among the words of a statement: 'one large zucchini'. */
function isSaid(name: string, words: string): boolean {
  const [first = ''] = name.toLowerCase().split(/[^\p{L}]+/u);
  return (
    first !== '' &&
    words
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .includes(first)
  );
}

function byVolume(amount: LineAmount, unit: VolumeUnit, food: Food | null): LikelyRange[] {
  const one = toMillilitres(new Fraction(1), unit, food?.kind === 'label');
  return rangesOf(amount.volumeMl, amount.sources, one);
}

/** By each of the food’s measures of volume: of that unit where it has some, else scaled by exact volumes. */
function byOwnMeasures(
  amount: LineAmount,
  unit: VolumeUnit,
  food: Food | null,
  context: AmountContext,
): readonly LikelyRange[] {
  const volumes = (food?.measures ?? []).filter((measure) => measureUnit(measure) !== null);
  const same = volumes.filter((measure) => measureUnit(measure) === unit);
  return perMeasure(amount, same.length > 0 ? same : volumes, context, unit);
}

function perMeasure(
  { massMg, sources }: LineAmount,
  measures: readonly FoodMeasure[],
  { kitchen }: AmountContext,
  unit: VolumeUnit | 'piece',
): LikelyRange[] {
  return measures.flatMap((measure) => {
    const own = measureUnit(measure);
    const times = own && isVolumeUnit(unit) ? MILLILITRES[unit].div(MILLILITRES[own]).valueOf() : 1;
    const one = (measure.massMg * measure.qtyDen * times) / measure.qtyNum;
    const spread = spreadOf(kitchen, measureKind(lineUnit(unit), measure.name));
    return rangesOf(massMg, sources, one).map(({ value, low, high }) => ({
      value,
      low: low / (1 + spread),
      high: spread < 1 ? high / (1 - spread) : Infinity,
    }));
  });
}

const lineUnit = (unit: VolumeUnit | 'piece'): LineUnit =>
  unit === 'pint' || unit === 'quart' || unit === 'gallon' ? 'l' : unit;
