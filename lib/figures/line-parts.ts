import type { Food } from '#lib/foods/food';
import { cellInterval } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import type { AmountContext } from '#lib/episode/context';
import { eatenAmount, type EatenAmount } from '#lib/episode/eaten-amount';
import type { LineAmount } from '#lib/episode/line-amount';
import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { statedNutrient } from '#lib/figures/composition';
import type { MissingPart, ProvisionalPart } from '#lib/figures/figure';
import { asEaten, boundedGaps, retained, type StandIn } from '#lib/figures/cooking-parts';
import { constant } from '#lib/units/sum-of-products';
import {
  addParts,
  eitherParts,
  NOTHING,
  scaleParts,
  subtractParts,
  type Parts,
} from '#lib/figures/parts';

/** The region decides whether carbohydrate includes fibre (US) or not (EU). */
export type Region = 'US' | 'EU';

/** EU: salt is sodium times 2.5 (Regulation (EU) 1169/2011, Annex I). */
const SALT_PER_SODIUM = 2.5;
/** kJ per gram: Regulation (EU) 1169/2011, Annex XIV. */
const KJ = { protein: 17, fat: 37, carbohydrate: 17, fibre: 8, alcohol: 29, polyols: 10 } as const;

/**
 * One ingredient's part of a nutrient. Missing food or grams leave it open, unless the matched food states
 * a plain zero; a missing value makes it 'at least'; a state without a yield is an error that leaves it open.
 * Where the person could not tell which of two foods it was, it lies anywhere between both.
 */
export function lineParts(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
  nutrient: Nutrient,
  region: Region,
): Parts {
  const of = (foodId: string | null) =>
    partsOfFood({ ...line, foodId }, weighings, context, nutrient, region);
  if (line.orFoodId === null) return of(line.foodId);
  return eitherParts(`either:${line.id}:${nutrient}`, of(line.foodId), of(line.orFoodId));
}

function partsOfFood(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
  nutrient: Nutrient,
  region: Region,
): Parts {
  const eaten = eatenAmount(line, weighings, context);
  if (eaten.known && eaten.recipe) {
    throw new Error(`${line.text} is made from a recipe: its parts are those of nestedParts`);
  }
  const provisional = eaten.food ? waitingOf(line, eaten.food.name) : [];
  return { ...knownParts(line, eaten, nutrient, region), provisional };
}

/** What of an ingredient waits for the person: its food, and the number of a photographed display. */
export function waitingOf(line: RecipeLine, foodName: string): readonly ProvisionalPart[] {
  const part = (why: ProvisionalPart['why']) => ({
    why,
    lineId: line.id,
    text: line.text,
    foodName,
  });
  return [
    ...(line.match === 'provisional' ? [part('match')] : []),
    ...(line.photographed ? [part('photo')] : []),
  ];
}

function knownParts(
  line: RecipeLine,
  eaten: EatenAmount,
  nutrient: Nutrient,
  region: Region,
): Parts {
  const missing = (reason: MissingPart['reason']): MissingPart => ({
    lineId: line.id,
    text: line.text,
    reason,
  });
  if (!eaten.known) {
    if (eaten.gap === 'noGrams' && eaten.food && addsNone(eaten.food, nutrient, region))
      return NOTHING;
    return { ...NOTHING, open: [missing(eaten.gap)] };
  }
  if (!eaten.food) throw new Error(`${line.text} is known and has no food`);
  const { food, amount } = eaten;
  const stated = foodParts(food, amount, nutrient, region, missing);
  const standIn = lacks(stated) ? boundedGaps(line, amount) : null;
  const all = standIn ? foodParts(food, amount, nutrient, region, missing, standIn) : stated;
  return asEaten(retained(all, line, nutrient, missing), eaten, nutrient, missing);
}

/**
 * Whether a reference food states a plain zero of the nutrient, or of all that it is derived from: then even
 * an unknown amount of it adds none. A label's 0 stands for a range from zero and does not count.
 */
function addsNone(food: Food, nutrient: Nutrient, region: Region): boolean {
  if (food.version.rule !== 'asPrinted') return false;
  const unit = [constant(1)];
  const some = {
    massMg: unit,
    volumeMl: unit,
    servings: unit,
    batches: null,
    edible: true,
    sources: new Map(),
  };
  const missing: Missing = (reason) => ({ lineId: food.id, text: food.name, reason });
  const parts = foodParts(food, some, nutrient, region, missing);
  if (lacks(parts)) return false;
  return parts.terms.every((term) => term.up.some((id) => parts.sources.get(id)?.value === 0));
}

function lacks({ above, below, open }: Parts): boolean {
  return above.length + below.length + open.length > 0;
}

/**
 * What a food holds of a nutrient in what it is stated for, in the region's words: per 100 g; per 100 ml, or per
 * serving, where that is all that its source says.
 * @returns the parts, and what they are for; `missing` says what the food does not state
 */
export function basisParts(
  food: Food,
  nutrient: Nutrient,
  region: Region,
): { readonly per: '100 g' | '100 ml' | 'serving'; readonly parts: Parts } {
  const { basis, serving } = food.version;
  const byMass = basis === 'per100g' || (basis === 'serving' && (serving?.massMg ?? null) !== null);
  const byVolume = basis === 'per100ml' || (basis === 'serving' && serving?.volumeMl != null);
  const per = byMass ? '100 g' : byVolume ? '100 ml' : 'serving';
  const amount: LineAmount = {
    massMg: per === '100 g' ? [constant(100_000)] : null,
    volumeMl: per === '100 ml' ? [constant(100)] : null,
    servings: per === 'serving' ? [constant(1)] : null,
    batches: null,
    edible: true,
    sources: new Map(),
  };
  const missing: Missing = (reason) => ({ lineId: food.id, text: food.name, reason });
  return { per, parts: foodParts(food, amount, nutrient, region, missing) };
}

type Missing = (reason: MissingPart['reason']) => MissingPart;

/**
 * What an amount of a food holds of a nutrient, in the nutrient's unit and the region's words: linear in the amount.
 * Net carbohydrate is what is left of it without fibre, which in the EU is the carbohydrate itself.
 * `missing` says what the food does not state; `standIn` gives what is counted in its place.
 */
export function foodParts(
  food: Food,
  amount: LineAmount,
  nutrient: Nutrient,
  region: Region,
  missing: Missing,
  standIn: StandIn = () => null,
): Parts {
  const of = direct(food, amount, standIn);
  if (nutrient === 'carbohydrate') return carbohydrate(food, of, region, missing);
  if (nutrient === 'netCarbohydrate') return carbohydrate(food, of, 'EU', missing);
  const stated = of(nutrient, missing('noValue'));
  if (stated.above.length === 0) return stated;
  // The same fact in the other region's words.
  if (nutrient === 'salt') {
    return scaleParts(of('sodium', missing('noValue')), SALT_PER_SODIUM / 1000);
  }
  if (nutrient === 'sodium') {
    const salt = of('salt', missing('noValue'));
    return salt.above.length === 0 ? scaleParts(salt, 1000 / SALT_PER_SODIUM) : stated;
  }
  if (nutrient === 'energyKj') return kilojoules(food, of, missing);
  return stated;
}

/** A nutrient as the food states it itself, or else what stands in for it, or what is said to be missing. */
type Direct = (nutrient: Nutrient, lacking: MissingPart) => Parts;

function direct(food: Food, amount: LineAmount, standIn: StandIn): Direct {
  return (nutrient, lacking) => {
    const stated = statedNutrient(food, amount, nutrient) ?? standIn(nutrient);
    if (!stated) return { ...NOTHING, above: [lacking] };
    return { ...NOTHING, terms: stated.terms, sources: stated.sources };
  };
}

/** Carbohydrate on the region's basis: fibre is taken away or added with the food's own value. */
function carbohydrate(food: Food, of: Direct, region: Region, missing: Missing): Parts {
  const stated = of('carbohydrate', missing('noValue'));
  const wanted = region === 'US' ? 'total' : 'available';
  if (food.version.carbBasis === wanted || stated.above.length > 0) return stated;
  const fibre = of('fibre', missing('noFibre'));
  return wanted === 'available' ? subtractParts(stated, fibre) : addParts([stated, fibre]);
}

/**
 * Energy in kJ from its own factors, where the food states none: never converted from kcal.
 * Alcohol and polyols are rarely stated. Where they are blank they are left out only if the stated kcal
 * are explained without them; else the energy is 'at least'.
 */
function kilojoules(food: Food, of: Direct, missing: Missing): Parts {
  const optional = (nutrient: 'alcohol' | 'polyols') => {
    const parts = of(nutrient, missing('noValue'));
    if (parts.above.length === 0) return scaleParts(parts, KJ[nutrient]);
    return macrosExplainEnergy(food) ? NOTHING : parts;
  };
  return addParts([
    scaleParts(of('protein', missing('noValue')), KJ.protein),
    scaleParts(of('fat', missing('noValue')), KJ.fat),
    scaleParts(carbohydrate(food, of, 'EU', missing), KJ.carbohydrate),
    scaleParts(of('fibre', missing('noValue')), KJ.fibre),
    optional('alcohol'),
    optional('polyols'),
  ]);
}

/**
 * Whether protein, fat and carbohydrate can account for a food's stated kcal: at most 7 % and 5 kcal
 * above 4-4-9, the wider band that 99 % of SR28's foods without alcohol keep.
 */
function macrosExplainEnergy(food: Food): boolean {
  const of = (nutrient: Nutrient) => cellInterval(food.version, nutrient);
  const energy = of('energyKcal');
  const protein = of('protein');
  const fat = of('fat');
  const carbohydrateStated = of('carbohydrate');
  if (!energy || !protein || !fat || !carbohydrateStated) return false;
  const explained = 4 * protein.high + 9 * fat.high + 4 * carbohydrateStated.high;
  return energy.low <= 1.07 * explained + 5;
}
