import type { Food, FoodState } from '#lib/foods/food';
import type { Interval } from '#lib/units/interval';
import {
  collect,
  divideBySource,
  evaluate,
  multiply,
  scale,
  source,
  type Term,
} from '#lib/units/sum-of-products';
import type { AmountContext } from '#lib/episode/context';
import { lineAmount, weighedAmount, type LineAmount } from '#lib/episode/line-amount';
import { nestedRecipe } from '#lib/episode/made-from';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { yieldFactor } from '#lib/episode/yield-choice';

/** Why an ingredient cannot be turned into grams of its food. */
export type AmountGap = 'noFood' | 'noGrams' | 'states' | 'leftBehind';

/** How much of an ingredient is eaten, of a food or of a nested recipe, or why that is not known. */
export type EatenAmount =
  | ({ readonly known: true; readonly food: Food; readonly recipe: null } & KnownAmount)
  | ({ readonly known: true; readonly food: null; readonly recipe: Recipe } & KnownAmount)
  | { readonly known: false; readonly gap: AmountGap; readonly food: Food | null };

interface KnownAmount {
  readonly amount: LineAmount;
  /** Fat that ran out of it and was poured off, in milligrams: less fat, not less of the food. */
  readonly fatLeftMg: readonly Term[] | null;
  /** True where something was left behind that is still to be weighed: less than this was eaten. */
  readonly leftNotWeighed: boolean;
}

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
  if (line.madeFrom) return eatenOfRecipe(line, weighings, context);
  const food = line.foodId === null ? null : (context.foods.get(line.foodId) ?? null);
  if (!food) return { known: false, gap: 'noFood', food: null };
  const { amount: stated, state } = statedFor(food, line, weighings, context);
  if (!stated.massMg && !stated.volumeMl && !stated.servings) {
    return { known: false, gap: 'noGrams', food };
  }
  const inState = toFoodState(basisOfRefuse(stated, line, food), state, line, food);
  if (!inState) return { known: false, gap: 'states', food };
  if (!hasBasisOf(food, inState)) return { known: false, gap: 'noGrams', food };
  const eaten = withoutLeftBehind(inState, line, weighings, context);
  if (!eaten) return { known: false, gap: 'noGrams', food };
  if (isNegative(eaten.amount)) return { known: false, gap: 'leftBehind', food };
  return { known: true, food, recipe: null, ...eaten };
}

const kept = new WeakMap<RecipeLine, KeptAmount>();

interface KeptAmount {
  readonly weighings: readonly Weighing[];
  readonly context: AmountContext;
  readonly eaten: EatenAmount;
}

/** The same, worked out once for an ingredient that is the same object in the same readings and context. */
export function eatenOnce(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): EatenAmount {
  const known = kept.get(line);
  if (known?.weighings === weighings && known.context === context) return known.eaten;
  const eaten = eatenAmount(line, weighings, context);
  kept.set(line, { weighings, context, eaten });
  return eaten;
}

function eatenOfRecipe(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): EatenAmount {
  const recipe = nestedRecipe(line, context);
  if (!recipe) return { known: false, gap: 'noFood', food: null };
  const weighed =
    weighedAmount(line, weighings, 'raw', context) ??
    weighedAmount(line, weighings, 'cooked', context);
  const stated = weighed ?? lineAmount(line, weighings, context);
  if (!stated.massMg && !stated.batches) return { known: false, gap: 'noGrams', food: null };
  const eaten = withoutLeftBehind(stated, line, weighings, context);
  if (!eaten) return { known: false, gap: 'noGrams', food: null };
  if (isNegative(eaten.amount)) return { known: false, gap: 'leftBehind', food: null };
  return { known: true, food: null, recipe, ...eaten };
}

/**
 * The amount and the state it was taken in: a reading of the cooked ingredient wherever its food's composition is
 * of the cooked one, or nothing else is known.
 */
function statedFor(
  food: Food,
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): { readonly amount: LineAmount; readonly state: FoodState } {
  const cooked = weighedAmount(line, weighings, 'cooked', context);
  const stated = lineAmount(line, weighings, context);
  const nothingElse = !stated.massMg && !stated.volumeMl && !stated.servings;
  if (cooked && (nothingElse || stateClass(food.version.state) === 'cooked')) {
    return { amount: cooked, state: 'cooked' };
  }
  return { amount: stated, state: line.state };
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

/**
 * The amount as the food's values count it: without peel and trim, unless the values are for the food with them.
 * Only a mass can lose its peel: volumes and servings are of what is eaten.
 */
function basisOfRefuse(amount: LineAmount, line: RecipeLine, food: Food): LineAmount {
  const refuse = food.version.refuse;
  if (!amount.massMg || !refuse || refuse.percent === 0) return amount;
  const withRefuse = line.asBought && !amount.edible;
  if (withRefuse === refuse.inValues) return amount;
  const id = `refuse:${food.version.id}`;
  const edible = 1 - refuse.percent / 100;
  const interval: Interval = {
    low: Math.max(edible / 2, edible - REFUSE_HALF),
    value: edible,
    high: Math.min(1, edible + REFUSE_HALF),
  };
  const counted = withRefuse
    ? multiply(amount.massMg, [source(id)])
    : divideBySource(amount.massMg, id);
  return massOnly(counted, amount, [[id, interval]]);
}

/** Raw and dry weigh alike, and so do cooked and drained; 'as is' means the food's own state. */
export function statesMatch(line: FoodState, food: FoodState): boolean {
  return (
    stateClass(line) === 'any' ||
    stateClass(food) === 'any' ||
    stateClass(line) === stateClass(food)
  );
}

/** What a weight in a state is of: 'drained' is cooked, 'dry' raw, 'as is' whatever the food is. */
export function stateClass(state: FoodState): 'raw' | 'cooked' | 'any' {
  if (state === 'raw' || state === 'dry') return 'raw';
  return state === 'asIs' ? 'any' : 'cooked';
}

function toFoodState(
  amount: LineAmount,
  state: FoodState,
  line: RecipeLine,
  food: Food,
): LineAmount | null {
  if (statesMatch(state, food.version.state)) return amount;
  const factor = yieldFactor(food, line);
  if (!factor || !amount.massMg) return null;
  const { up, down, sources } = factor;
  const toCooked = stateClass(state) === 'raw';
  const [times, by] = toCooked ? [up, down] : [down, up];
  const multiplied = times === null ? amount.massMg : multiply(amount.massMg, [source(times)]);
  const converted = by === null ? multiplied : divideBySource(multiplied, by);
  return massOnly(converted, amount, [...sources]);
}

/**
 * Cooked grams from one raw gram of a food: that of its first observed yield, or for the ingredient given; null
 * without any.
 * `meanYield(food)` → `0.72`
 */
export function meanYield(
  food: Food,
  line: Pick<RecipeLine, 'id' | 'cookMethod'> = { id: '', cookMethod: null },
): number | null {
  return yieldFactor(food, line)?.value ?? null;
}

function withoutLeftBehind(
  amount: LineAmount,
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): KnownAmount | null {
  const { leftBehind } = line;
  const all = { amount, fatLeftMg: null, leftNotWeighed: false };
  if (leftBehind.kind === 'none') return all;
  const left =
    leftBehind.kind === 'mass'
      ? typedLeft(line.id, leftBehind)
      : weighedAmount(line, weighings, 'left', context);
  if (!left?.massMg) return { ...all, leftNotWeighed: true };
  if (leftBehind.made === 'fat') {
    const sources = new Map([...amount.sources, ...left.sources]);
    return { ...all, amount: { ...amount, sources }, fatLeftMg: left.massMg };
  }
  if (!amount.massMg) return null;
  const massMg = collect([...amount.massMg, ...scale(left.massMg, -1)]);
  return { ...all, amount: massOnly(massMg, amount, [...left.sources]) };
}

function typedLeft(
  lineId: string,
  mass: { readonly lowMg: number; readonly valueMg: number; readonly highMg: number },
): Pick<LineAmount, 'massMg' | 'sources'> {
  const id = `left:${lineId}`;
  const interval = { low: mass.lowMg, value: mass.valueMg, high: mass.highMg };
  return { massMg: [source(id)], sources: new Map([[id, interval]]) };
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
    batches: null,
    edible: amount.edible,
    sources: new Map([...amount.sources, ...added]),
  };
}
