import Fraction from 'fraction.js';
import type { Food, FoodMeasure } from '#lib/foods/food';
import { servingInterval } from '#lib/foods/label-rounding';
import { plusMinus, type Interval } from '#lib/units/interval';
import { collect, constant, multiply, scale, source, type Term } from '#lib/units/sum-of-products';
import { isMassUnit, isVolumeUnit, toMilligrams, toMillilitres } from '#lib/units/units';
import type { AmountContext } from '#lib/episode/context';
import type { Ratio } from '#lib/episode/fields';
import type { LineUnit, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { nestedAmount, nestedRecipe } from '#lib/episode/made-from';
import { readingAmount } from '#lib/episode/reading';
import { measureKind, plannedResolutionMg, spreadOf } from '#lib/episode/spreads';

/**
 * How much of a food an ingredient is, as sums over uncertain sources, in each measure that is known:
 * milligrams, millilitres, or label servings. All are null where the amount cannot be known.
 */
export interface LineAmount {
  readonly massMg: readonly Term[] | null;
  readonly volumeMl: readonly Term[] | null;
  readonly servings: readonly Term[] | null;
  /** How many times a whole recipe, where the ingredient is made from one. */
  readonly batches: readonly Term[] | null;
  /**
   * True where the amount is of what is eaten already: household weights and label servings are without
   * peel, shell and ends (USDA SR28 documentation, Weight file; from memory).
   */
  readonly edible: boolean;
  readonly sources: ReadonlyMap<string, Interval>;
}

const UNKNOWN: LineAmount = {
  massMg: null,
  volumeMl: null,
  servings: null,
  batches: null,
  edible: false,
  sources: new Map(),
};

/**
 * The amount an ingredient states, before refuse, yields and what is left behind.
 * What was weighed wins over grams typed, grams typed over quantity and unit.
 *
 * @param weighings the recipe's readings; those of kind 'raw' that share in the line count
 * @example 2 tbsp of a food whose tablespoon weighs 13.5 g: 27 g, the measure's spread shared by all
 *   lines that use the same measure of the same food
 */
export function lineAmount(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): LineAmount {
  return (
    weighedAmount(line, weighings, 'raw', context) ??
    writtenAmount(line, context.foods.get(line.foodId ?? '') ?? null, context)
  );
}

/** What readings of a kind that share in an ingredient come to; null where it has none. */
export function weighedAmount(
  line: RecipeLine,
  weighings: readonly Weighing[],
  kind: Weighing['kind'],
  context: AmountContext,
): LineAmount | null {
  const readings = weighings.filter(
    (weighing) =>
      weighing.kind === kind && weighing.shares.some(({ lineId }) => lineId === line.id),
  );
  if (readings.length === 0) return null;
  const parts = readings.flatMap((reading) => {
    const net = readingAmount(reading, context.kitchen, weighings);
    return reading.shares
      .filter((share) => share.lineId === line.id)
      .map((share) => ({ terms: scale(net.terms, ratioValue(share.share)), sources: net.sources }));
  });
  return {
    ...UNKNOWN,
    massMg: collect(parts.flatMap((part) => part.terms)),
    sources: new Map(parts.flatMap((part) => [...part.sources])),
  };
}

/** The amount as planned or written, whatever was weighed later: what a shopping list needs. */
export function writtenAmount(
  line: RecipeLine,
  food: Food | null,
  context: AmountContext,
): LineAmount {
  const half = plannedResolutionMg(context.kitchen) / 2;
  if (line.planned) {
    const { lowMg, valueMg, highMg } = line.planned;
    const interval =
      lowMg === highMg ? plusMinus(valueMg, half) : { low: lowMg, value: valueMg, high: highMg };
    return massFrom(`amount:${line.id}`, interval);
  }
  if (!line.quantity || !line.unit) return UNKNOWN;
  const quantity = quantityInterval(line.quantity);
  if (isMassUnit(line.unit)) {
    const perUnit = toMilligrams(new Fraction(1), line.unit);
    return massFrom(`amount:${line.id}`, {
      low: Math.max(0, quantity.low * perUnit - half),
      value: quantity.value * perUnit,
      high: quantity.high * perUnit + half,
    });
  }
  if (line.unit === 'batch' || line.unit === 'portion') {
    const recipe = nestedRecipe(line, context);
    const count = countOf(line, quantity);
    const nested = recipe && nestedAmount(count.terms, line.unit, line.measureName, recipe);
    if (!nested) return UNKNOWN;
    return { ...UNKNOWN, ...nested, sources: new Map([...count.sources, ...nested.sources]) };
  }
  return food ? byMeasure(line, line.unit, quantity, food, context) : UNKNOWN;
}

/** How many of a unit: exact, or a source of its own where the words give a range. */
function countOf(line: RecipeLine, quantity: Interval) {
  const id = `quantity:${line.id}`;
  const exact = quantity.low === quantity.high;
  return {
    terms: exact ? [constant(quantity.value)] : [source(id)],
    sources: new Map<string, Interval>(exact ? [] : [[id, quantity]]),
  };
}

function massFrom(id: string, interval: Interval): LineAmount {
  return { ...UNKNOWN, massMg: [source(id)], sources: new Map([[id, interval]]) };
}

function ratioValue(ratio: Ratio): number {
  return ratio.num / ratio.den;
}

function quantityInterval(quantity: NonNullable<RecipeLine['quantity']>): Interval {
  const low = ratioValue(quantity.low);
  const high = ratioValue(quantity.high);
  return { low, value: (low + high) / 2, high };
}

function byMeasure(
  line: RecipeLine,
  unit: LineUnit,
  quantity: Interval,
  food: Food,
  context: AmountContext,
): LineAmount {
  const { terms: count, sources } = countOf(line, quantity);

  if (unit === 'serving') {
    const serving = servingInterval(food.version);
    const id = `serving:${food.version.id}`;
    if (!food.version.serving) return UNKNOWN;
    if (serving) sources.set(id, serving);
    return {
      ...UNKNOWN,
      massMg: serving ? multiply(count, [source(id)]) : null,
      volumeMl: food.version.serving.volumeMl ? scale(count, food.version.serving.volumeMl) : null,
      servings: count,
      edible: true,
      sources,
    };
  }
  if (unit === 'pack') {
    const pack = context.packs.get(food.id)?.[0];
    if (!pack) return UNKNOWN;
    // What is stated for the drained food is of a pack's drained weight: its liquid is none of it.
    const drained = food.version.state === 'drained';
    const massMg = drained ? pack.drainedMg : pack.netMg;
    return {
      ...UNKNOWN,
      massMg: massMg === null ? null : scale(count, massMg),
      volumeMl: drained || pack.netMl === null ? null : scale(count, pack.netMl),
      sources,
    };
  }
  const found = findMeasure(unit, line.measureName, food);
  const volumeMl = isVolumeUnit(unit)
    ? scale(count, toMillilitres(new Fraction(1), unit, food.kind === 'label'))
    : null;
  if (!found) return { ...UNKNOWN, volumeMl, edible: true, sources };
  const id = `measure:${food.id}:${found.measure.id}`;
  sources.set(id, measureInterval(found.measure, unit, context));
  const perUnit = (found.factor * found.measure.qtyDen) / found.measure.qtyNum;
  return {
    ...UNKNOWN,
    massMg: multiply(scale(count, perUnit), [source(id)]),
    volumeMl,
    edible: true,
    sources,
  };
}

function measureInterval(measure: FoodMeasure, unit: LineUnit, context: AmountContext): Interval {
  const spread = spreadOf(context.kitchen, measureKind(unit, measure.name));
  const digits = (0.5 * 1000) / 10 ** measure.digits;
  if (spread === 0) return plusMinus(measure.massMg, digits);
  return plusMinus(measure.massMg, measure.massMg * spread + digits);
}

interface FoundMeasure {
  readonly measure: FoodMeasure;
  /** How many of the measure one unit is. */
  readonly factor: number;
}

/**
 * The food's own measure for a unit: the one named, else the first of that unit, else for a volume
 * another volume measure scaled by exact volumes. Null where the food has none that fits, or none of the
 * name given: another would be a guess.
 */
export function findMeasure(
  unit: LineUnit,
  measureName: string | null,
  food: Food,
): FoundMeasure | null {
  const named = food.measures.find((measure) => measure.name === measureName);
  if (measureName !== null && !named) return null;
  if (named && unit === 'piece') return { measure: named, factor: 1 };
  if (unit === 'piece') {
    const first = food.measures.find((measure) => measureUnit(measure) === null);
    return first ? { measure: first, factor: 1 } : null;
  }
  if (!isVolumeUnit(unit)) return null;
  const candidates = named ? [named, ...food.measures] : food.measures;
  const same = candidates.find((measure) => measureUnit(measure) === unit);
  if (same) return { measure: same, factor: 1 };
  for (const measure of candidates) {
    const other = measureUnit(measure);
    if (!other) continue;
    const factor = toMillilitres(new Fraction(1), unit) / toMillilitres(new Fraction(1), other);
    return { measure, factor };
  }
  return null;
}

const MEASURE_WORDS = [
  [/^cups?\b/i, 'cup'],
  [/^(tbsp|tablespoons?)\b/i, 'tbsp'],
  [/^(tsp|teaspoons?)\b/i, 'tsp'],
  [/^fl\.? ?oz\b/i, 'flOz'],
] as const;

/** The unit of volume that a measure is of, by its name; null for one of another kind. */
export function measureUnit(measure: FoodMeasure): 'cup' | 'tbsp' | 'tsp' | 'flOz' | null {
  return MEASURE_WORDS.find(([pattern]) => pattern.test(measure.name))?.[1] ?? null;
}
