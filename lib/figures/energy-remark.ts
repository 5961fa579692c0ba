import { amountContext, dishesOf, type Dish } from '#lib/episode/context';
import type { EnergyStep, EpisodeFile } from '#lib/episode/schema';
import type { DishFigures, EpisodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { someOf } from '#lib/figures/print-figure';
import type { NumberScope, PublishedNumbers } from '#lib/figures/published-numbers';
import { energyReasons, ownFactors } from '#lib/foods/energy-check';
import { cellOf } from '#lib/foods/cell-of';
import type { Food } from '#lib/foods/food';
import { printedValue } from '#lib/units/printed';
import { printCount } from '#lib/units/print';

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
 * Holds a dish's printed macros against its printed calories: by 4, 4 and 9 kcal a gram (21 CFR
 * 101.9(c)(1)(i)(B)) within 8.5 kcal and half an energy step. Null where they fit, or one of the four is not
 * known. What is stated stays as it is; a remark names why the two may differ: fibre that counts less, an
 * ingredient of alcohol, acids or sweeteners, or a table's own factors.
 * @example energyRemark(file, figures, numbers, segmentId)?.words
 *   // '24 g protein, 9 g fat and 60 g carbohydrate make 417 kcal by 4, 9 and 4 a gram; 380 is printed. …'
 */
export function energyRemark(
  file: EpisodeFile,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
  segmentId: string,
  energyStep: EnergyStep = 1,
): EnergyRemark | null {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const of = figures.dishes.find((each) => each.segmentId === segmentId);
  if (!dish || !of) return null;
  const scope: NumberScope = { kind: 'whole', segmentId };
  const shown = (['energyKcal', 'protein', 'fat', 'carbohydrate'] as const).map((nutrient) => {
    const { number, status } = numbers(nutrient, scope);
    return number === null || status !== 'known' ? null : Number(number);
  });
  const [printed, protein, fat, carbohydrate] = shown;
  if (printed == null || protein == null || fat == null || carbohydrate == null) return null;
  const given = 4 * protein + 9 * fat + 4 * carbohydrate;
  const slack = MACRO_SLACK + energyStep / 2;
  if (Math.abs(given - printed) <= slack) return null;
  const told =
    `${protein} g protein, ${fat} g fat and ${carbohydrate} g carbohydrate make ` +
    `${printCount(given)} kcal by 4, 9 and 4 a gram; ${printCount(printed)} is printed.`;
  const likely = likelyReason(dish, of, file, { given, printed, slack });
  return { given, printed, reason: likely.reason, words: `${told} ${likely.words}` };
}

interface Miss {
  readonly given: number;
  readonly printed: number;
  readonly slack: number;
}

function likelyReason(
  dish: Dish,
  of: DishFigures,
  file: EpisodeFile,
  { given, printed, slack }: Miss,
): Pick<EnergyRemark, 'reason' | 'words'> {
  const { foods } = amountContext(file);
  const used = of.lines.flatMap((line) => {
    const food = line.foodId === null ? undefined : foods.get(line.foodId);
    const eaten = line.eatenMg?.value ?? 0;
    return food ? [{ food, eatenMg: eaten, text: line.text }] : [];
  });
  const fibre = of.whole.fibre;
  // Inside the carbohydrate in the US, at up to 4 kcal a gram too much; outside it in the EU, at 2 a gram too little.
  const most = fibre && figureStatus(fibre) === 'known' ? fibre.value : 0;
  const inside = file.episode.region === 'US';
  const explained = inside
    ? given > printed && given - 4 * most - slack <= printed
    : printed > given && given + 2 * most + slack >= printed;
  const miss = printed - given;
  const own = used.reduce((sum, { food, eatenMg }) => sum + ownDifference(food, eatenMg), 0);
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
    words: `No reason for it is known in ${dish.title}: look through what the labels say.`,
  };
}

/** What a food's own factors give beyond 4, 4 and 9, in kcal of what is eaten of it; 0 where it has none. */
function ownDifference({ version }: Food, eatenMg: number): number {
  const own = ownFactors(version);
  if (!own || version.basis !== 'per100g') return 0;
  const grams = (nutrient: 'protein' | 'fat' | 'carbohydrate') => {
    const cell = cellOf(version.values, nutrient);
    return cell.kind === 'eq' ? (printedValue(cell) * eatenMg) / 100_000 : 0;
  };
  return (
    (own.protein - 4) * grams('protein') +
    (own.fat - 9) * grams('fat') +
    (own.carbohydrate - 4) * grams('carbohydrate')
  );
}
