import type { Food, FoodState, YieldObservation } from '#lib/foods/food';
import type { Interval } from '#lib/units/interval';
import {
  constant,
  divideBySource,
  evaluate,
  multiply,
  scale,
  source,
  type Term,
} from '#lib/units/sum-of-products';
import type { AmountContext } from '#lib/episode/context';
import { lineAmount, type LineAmount } from '#lib/episode/line-amount';
import type { RecipeLine, Weighing } from '#lib/episode/schema';

/** Why an ingredient cannot be turned into grams of its food. */
export type AmountGap = 'noFood' | 'noGrams' | 'states' | 'leftBehind';

export type EatenAmount =
  | { readonly known: true; readonly amount: LineAmount; readonly food: Food }
  | { readonly known: false; readonly gap: AmountGap; readonly food: Food | null };

/** Published or single yields stand for ± 5 points (common practice, no source). */
const YIELD_POINTS = 0.05;
/** Refuse is printed in whole percent: ± half a point. */
const REFUSE_HALF = 0.005;

/**
 * What of an ingredient is eaten, in the state in which its food's composition holds:
 * refuse taken off where the amount is as bought, a yield applied where raw and cooked differ,
 * and what stays in the pan, tray or bowl taken away.
 *
 * @returns the amount, or which of food, grams and states is missing: never a guess
 */
export function eatenAmount(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): EatenAmount {
  const food = line.foodId === null ? null : (context.foods.get(line.foodId) ?? null);
  if (!food) return { known: false, gap: 'noFood', food: null };
  const stated = lineAmount(line, weighings, context);
  if (!stated.massMg && !stated.volumeMl && !stated.servings) {
    return { known: false, gap: 'noGrams', food };
  }
  const edible = line.asBought && !stated.edible ? withoutRefuse(stated, food) : stated;
  const inState = toFoodState(edible, line.state, food);
  if (!inState) return { known: false, gap: 'states', food };
  if (!hasBasisOf(food, inState)) return { known: false, gap: 'noGrams', food };
  const eaten = withoutLeftBehind(inState, line);
  if (!eaten) return { known: false, gap: 'noGrams', food };
  if (isNegative(eaten)) return { known: false, gap: 'leftBehind', food };
  return { known: true, amount: eaten, food };
}

/** Whether an amount is in a measure that the food's composition is stated for: a cup says nothing per 100 g. */
function hasBasisOf({ version }: Food, amount: LineAmount): boolean {
  const { massMg, volumeMl, servings } = amount;
  if (version.basis === 'per100g') return massMg !== null;
  if (version.basis === 'per100ml') return volumeMl !== null;
  const { serving } = version;
  return (
    servings !== null ||
    (massMg !== null && serving?.massMg != null) ||
    (volumeMl !== null && serving?.volumeMl != null)
  );
}

/** Only a mass can lose its peel: volumes and servings are of what is eaten. */
function withoutRefuse(amount: LineAmount, food: Food): LineAmount {
  const refuse = food.version.refuse;
  if (!amount.massMg || !refuse || refuse.percent === 0) return amount;
  const id = `refuse:${food.version.id}`;
  const edible = 1 - refuse.percent / 100;
  const interval: Interval = {
    low: Math.max(0, edible - REFUSE_HALF),
    value: edible,
    high: Math.min(1, edible + REFUSE_HALF),
  };
  return massOnly(multiply(amount.massMg, [source(id)]), amount, [[id, interval]]);
}

/** Raw and dry weigh alike, and so do cooked and drained; 'as is' means the food's own state. */
export function statesMatch(line: FoodState, food: FoodState): boolean {
  return (
    stateClass(line) === 'any' ||
    stateClass(food) === 'any' ||
    stateClass(line) === stateClass(food)
  );
}

function stateClass(state: FoodState): 'raw' | 'cooked' | 'any' {
  if (state === 'raw' || state === 'dry') return 'raw';
  return state === 'asIs' ? 'any' : 'cooked';
}

function toFoodState(amount: LineAmount, state: FoodState, food: Food): LineAmount | null {
  if (statesMatch(state, food.version.state)) return amount;
  const observed = food.yields[0];
  if (!observed || !amount.massMg) return null;
  const id = `yield:${food.id}:${observed.method}`;
  const sources: [string, Interval][] = [[id, yieldInterval(food.yields, observed.method)]];
  const converted =
    stateClass(state) === 'raw'
      ? multiply(amount.massMg, [source(id)])
      : divideBySource(amount.massMg, id);
  return massOnly(converted, amount, sources);
}

/**
 * Cooked grams from one raw gram of a food: the mean of its observations by its first method, null without any.
 * `meanYield(food)` → `0.72`
 */
export function meanYield(food: Food): number | null {
  const first = food.yields[0];
  return first ? yieldInterval(food.yields, first.method).value : null;
}

/** Range of a food's observations by one method: two or more span it, one stands for ± 5 points. */
function yieldInterval(yields: readonly YieldObservation[], method: string): Interval {
  const shares = yields
    .filter((each) => each.method === method)
    .map((each) => each.cookedMg / each.rawMg);
  const value = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  if (shares.length > 1) return { low: Math.min(...shares), value, high: Math.max(...shares) };
  return { low: value - YIELD_POINTS, value, high: value + YIELD_POINTS };
}

function withoutLeftBehind(amount: LineAmount, line: RecipeLine): LineAmount | null {
  if (line.leftBehind.kind === 'none') return amount;
  if (!amount.massMg) return null;
  const { lowMg, valueMg, highMg } = line.leftBehind;
  const taken: Term[] =
    lowMg === highMg ? [constant(-valueMg)] : scale([source(`left:${line.id}`)], -1);
  return massOnly([...amount.massMg, ...taken], amount, [
    [`left:${line.id}`, { low: lowMg, value: valueMg, high: highMg }],
  ]);
}

/** More left behind than there was: an error, since it would take away from the other ingredients. */
function isNegative({ massMg, sources }: LineAmount): boolean {
  if (!massMg) return false;
  return evaluate(massMg, new Map([...sources].map(([id, { value }]) => [id, value]))) < 0;
}

function massOnly(
  massMg: readonly Term[],
  amount: LineAmount,
  added: readonly (readonly [string, Interval])[],
): LineAmount {
  return {
    massMg,
    volumeMl: null,
    servings: null,
    edible: amount.edible,
    sources: new Map([...amount.sources, ...added]),
  };
}
