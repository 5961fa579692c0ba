import { cellOf } from '#lib/foods/cell-of';
import type { Food } from '#lib/foods/food';
import { saysCooked } from '#lib/foods/guess-state';
import type { Match, SaidFood } from '#lib/foods/match-food';
import { LEAN } from '#lib/foods/match-words';
import type { Nutrient } from '#lib/foods/nutrients';
import { judgeShare } from '#lib/foods/said-shares';
import { printedValue } from '#lib/units/printed';

/** Scores that are nearer than this are the same good. */
const SAME_SCORE = 0.02;
/** Foods of which energies differ by more are not the same thing. */
const SAME_ENERGY = 0.2;
/** Foods of so little energy are the same whatever their shares. */
const LITTLE_KCAL = 15;
/** Foods of which protein differs by more, in grams of 100 g, are not the same either: an isolate and a concentrate. */
const SAME_PROTEIN = 10;

/** Sections in whose foods a bare percentage is one of fat. */
const FAT_IS_MEANT: ReadonlySet<string> = new Set(['dairyAndEggs', 'meatAndFish']);

/**
 * The food that an ingredient's words mean, among those that may be meant, best first: the first, unless the fat that
 * was said is not in it, or another fits the words as well and has another energy or much more protein: which of them is then asked.
 * @example chooseMatch(saidFood('Greek yogurt 10%', known), fitting) // null: no Greek yogurt in the table has 10 %
 */
export function chooseMatch(
  said: SaidFood,
  fitting: readonly { readonly match: Match; readonly food: Food }[],
): Food | null {
  const left = fitting.filter(({ food }) => sharesFit(said, food));
  // What is drained was in its liquid or was cooked.
  const saysIt = saysCooked(said.folded) || /\bdrained\b/.test(said.folded);
  const uncooked = left.filter(({ food }) => saysIt || !saysCooked(food.name));
  const [best, ...others] = uncooked.length > 0 ? uncooked : left;
  if (!best) return null;
  const alike = others.filter(({ match }) => match.score > best.match.score - SAME_SCORE);
  return alike.every(({ food }) => isAlike(food, best.food)) ? best.food : null;
}

function sharesFit(said: SaidFood, food: Food): boolean {
  const fatIn100 = valueIn100(food, 'fat');
  const saysFat = said.shares.some(({ of }) => of === 'fat');
  if (!saysFat && LEAN.word.test(said.folded) && fatIn100 !== null && fatIn100 >= LEAN.below) {
    return false;
  }
  const fatIsMeant = FAT_IS_MEANT.has(food.section);
  return said.shares.every(
    (share) => judgeShare(share, { name: food.name, fatIsMeant, fatIn100 }) === 'fits',
  );
}

function isAlike(a: Food, b: Food): boolean {
  const [one, other] = [valueIn100(a, 'protein'), valueIn100(b, 'protein')];
  const sameProtein = one === null || other === null || Math.abs(one - other) <= SAME_PROTEIN;
  return sameProtein && sameEnergy(a, b);
}

function sameEnergy(a: Food, b: Food): boolean {
  const [one, other] = [valueIn100(a, 'energyKcal'), valueIn100(b, 'energyKcal')];
  if (one === null || other === null) return one === other;
  const [low, high] = one < other ? [one, other] : [other, one];
  return high - low <= LITTLE_KCAL || high <= low * (1 + SAME_ENERGY);
}

function valueIn100({ version }: Food, nutrient: Nutrient): number | null {
  if (version.basis !== 'per100g') return null;
  const cell = cellOf(version.values, nutrient);
  return cell.kind === 'eq' ? printedValue(cell) : null;
}
