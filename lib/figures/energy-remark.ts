import { amountContext, dishesOf, type AmountContext } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EnergyStep, EpisodeFile } from '#lib/episode/schema';
import { figureParts } from '#lib/figures/breakdown-parts';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { someOf } from '#lib/figures/print-figure';
import {
  figuresFor,
  type NumberScope,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { energyReasons, ownFactors } from '#lib/foods/energy-check';
import { cellOf } from '#lib/foods/cell-of';
import type { Food } from '#lib/foods/food';
import { boundsOf } from '#lib/units/bounds';
import { printedValue } from '#lib/units/printed';
import { printCount, printTo } from '#lib/units/print';

/** Printed protein, fat and carbohydrate that do not give the printed calories. */
export interface EnergyRemark {
  /** What 4, 4 and 9 kcal a gram make of the printed macros, and what is printed, in kcal. */
  readonly given: number;
  readonly printed: number;
  /** The likeliest reason, or null where none is known: then the ingredients are worth a look. */
  readonly reason: 'fibre' | 'named' | 'ownFactors' | null;
  readonly words: string;
}

/** What rounding of the macros to whole grams may move: 4 × 0.5 + 9 × 0.5 + 4 × 0.5 kcal. */
const MACRO_SLACK = 8.5;

/**
 * Holds an amount's printed macros against its printed calories: by 4, 4 and 9 kcal a gram (21 CFR
 * 101.9(c)(1)(i)(B)) within 8.5 kcal and half an energy step. Null where they fit, or one of the four is not
 * known, or where what was said of the calories is outside their range, which is told by itself. What is stated stays
 * as it is; a remark names why the two may differ: fibre that counts less, an
 * ingredient of alcohol, acids or sweeteners, or a table's own factors.
 * @param scope a dish, a portion or the day
 * @example energyRemark(file, figures, numbers, { kind: 'whole', segmentId })?.words
 *   // '24 g protein, 9 g fat and 60 g carbohydrate make 417 kcal by 4, 9 and 4 a gram; 380 is printed. …'
 */
export function energyRemark(
  file: EpisodeFile,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
  scope: NumberScope,
  energyStep: EnergyStep = file.episode.energyStep,
): EnergyRemark | null {
  const shown = (['energyKcal', 'protein', 'fat', 'carbohydrate'] as const).map((nutrient) => {
    const { number, status } = numbers(nutrient, scope);
    return number === null || status !== 'known' ? null : Number(number);
  });
  const [printed, protein, fat, carbohydrate] = shown;
  const energy = numbers('energyKcal', scope);
  if (energy.said?.outside) return null;
  if (printed == null || protein == null || fat == null || carbohydrate == null) return null;
  const given = 4 * protein + 9 * fat + 4 * carbohydrate;
  const slack = MACRO_SLACK + energyStep / 2;
  if (Math.abs(given - printed) <= slack) return null;
  const told =
    `${protein} g protein, ${fat} g fat and ${carbohydrate} g carbohydrate make ` +
    `${printTo(given, 1)} kcal by 4, 9 and 4 a gram; ${energy.number ?? ''} is printed.`;
  const likely = likelyReason(file, figures, scope, { given, printed, slack });
  return { given, printed, reason: likely.reason, words: `${told} ${likely.words}` };
}

interface Miss {
  readonly given: number;
  readonly printed: number;
  readonly slack: number;
}

function likelyReason(
  file: EpisodeFile,
  figures: EpisodeFigures,
  scope: NumberScope,
  { given, printed, slack }: Miss,
): Pick<EnergyRemark, 'reason' | 'words'> {
  const used = usedIn(file, scope);
  const fibre = figuresFor(figures, scope)?.fibre;
  // Inside the carbohydrate in the US, at up to 4 kcal a gram too much; outside it in the EU, at 2 a gram too little.
  const most = fibre && figureStatus(fibre) === 'known' ? fibre.value : 0;
  const inside = file.episode.region === 'US';
  const explained = inside
    ? given > printed && given - 4 * most - slack <= printed
    : printed > given && given + 2 * most + slack >= printed;
  const miss = printed - given;
  const own = used.reduce((sum, { food, massMg }) => sum + ownDifference(food, massMg), 0);
  if (explained && most > 0) {
    const counts = inside ? 'is in the carbohydrate and counts less' : 'counts 2 a gram beside it';
    return { reason: 'fibre', words: `Likely fibre: ${printCount(most)} g of it ${counts}.` };
  }
  if (Math.abs(miss - own) <= slack) {
    const words = 'Likely the table’s own factors: it counts each food by what is digested of it.';
    return { reason: 'ownFactors', words };
  }
  const named = used.filter(({ food }) =>
    // Alcohol alone adds what no macro has; the others take away.
    energyReasons(food.name, food.version).some(
      ({ code }) => (code === 'alcohol') === miss > 0 || code === 'acids',
    ),
  );
  if (named.length > 0) {
    const reasons = named.flatMap(({ food }) => energyReasons(food.name, food.version));
    const why = [...new Set(reasons.map(({ words }) => words))].join('; ');
    const texts = someOf([...new Set(named.map(({ text }) => text))]);
    return { reason: 'named', words: `Likely ${texts}: ${why}.` };
  }
  return {
    reason: null,
    words: `No reason for it is known in ${titleOf(file, scope)}: look through what the labels say.`,
  };
}

interface Used {
  readonly food: Food;
  /** Milligrams in the amount; 0 where that is not known. */
  readonly massMg: number;
  /** The ingredient as written in the dish. */
  readonly text: string;
}

/** The foods of an amount's ingredients; of a nested recipe by its ingredient, without their grams. */
function usedIn(file: EpisodeFile, scope: NumberScope): readonly Used[] {
  const context = amountContext(file);
  const rows = figureParts(file, scope, 'energyKcal')?.rows ?? [];
  return rows.flatMap(({ line, massMg: { terms, sources } }) => {
    const massMg = line.madeFrom ? 0 : boundsOf(terms, sources).value;
    return foodsIn(line, context, []).map((food) => ({ food, text: line.text, massMg }));
  });
}

function foodsIn(
  { foodId, madeFrom }: Pick<RecipeLine, 'foodId' | 'madeFrom'>,
  context: AmountContext,
  above: readonly string[],
): Food[] {
  const food = foodId === null ? undefined : context.foods.get(foodId);
  if (food) return [food];
  const recipe = madeFrom && context.recipes.get(madeFrom.recipeId);
  if (!recipe || above.includes(recipe.id)) return [];
  return recipe.lines.flatMap((each) => foodsIn(each, context, [...above, recipe.id]));
}

function titleOf({ episode }: EpisodeFile, scope: NumberScope): string {
  if (scope.kind === 'day') return 'these dishes';
  const dish = dishesOf(episode.segments).find(({ id, recipe }) =>
    scope.kind === 'portion'
      ? recipe.portions.some((portion) => portion.id === scope.portionId)
      : id === scope.segmentId,
  );
  return dish?.title ?? 'it';
}

/** What a food's own factors give beyond 4, 4 and 9, in kcal of what is eaten of it; 0 where it has none. */
function ownDifference({ version }: Food, massMg: number): number {
  const own = ownFactors(version);
  if (!own || version.basis !== 'per100g') return 0;
  const grams = (nutrient: 'protein' | 'fat' | 'carbohydrate') => {
    const cell = cellOf(version.values, nutrient);
    return cell.kind === 'eq' ? (printedValue(cell) * massMg) / 100_000 : 0;
  };
  return (
    (own.protein - 4) * grams('protein') +
    (own.fat - 9) * grams('fat') +
    (own.carbohydrate - 4) * grams('carbohydrate')
  );
}
