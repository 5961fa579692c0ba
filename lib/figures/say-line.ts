import type { DishFigures, EpisodeFigures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import type { NumberScope, PublishedNumbers } from '#lib/figures/published-numbers';
import { printCount, roundTo, settled } from '#lib/units/print';

/** A sentence to say or copy about one amount of a dish, or why there is none yet. */
export type SayLine =
  { readonly ready: true; readonly text: string } | { readonly ready: false; readonly why: string };

/** What a spoken number may be rounded to, finest first: whole, fives, tens and so on. */
const SPOKEN_STEPS = [1, 5, 10, 50, 100, 500] as const;

/**
 * The step that a figure's likely range supports: the coarsest whose rounding adds no more error than the
 * range has already, and whole units where even they are finer than it.
 * @param halfWidth half of the likely range, in the figure's unit
 * @example spokenStep(37) // 50: 1285 ± 37 is said as about 1,300
 * @example spokenStep(1.5) // 1: 52 ± 1.5 g is said as 52
 */
export function spokenStep(halfWidth: number): number {
  return SPOKEN_STEPS.findLast((step) => step / 2 <= settled(halfWidth)) ?? 1;
}

/**
 * A figure as it is said: no more digits than its likely range supports, 'about' where it is rounded beyond
 * whole units, 'at least' rounded down. Null where it is open, or can only be called 'at most'.
 * @param published the whole number that is written of it; said as it stands where whole units are
 * @example spokenNumber(energy, '1285') // 'about 1,300' where the likely range is 1248 to 1322
 */
export function spokenNumber(figure: Figure, published: string): string | null {
  const status = figureStatus(figure);
  if (status === 'atLeast') return `at least ${printCount(Math.floor(settled(figure.low ?? 0)))}`;
  if (status !== 'known') return null;
  const step = spokenStep(((figure.likelyHigh ?? 0) - (figure.likelyLow ?? 0)) / 2);
  const rounded = roundTo(figure.value, step);
  // A step that swallows the number itself says nothing.
  if (step === 1 || rounded === 0) return printCount(Number(published));
  return `about ${printCount(rounded)}`;
}

/**
 * The line to say of a dish: energy and protein of one equal portion where there are any, else of all of it.
 * @returns why not, while a number in it is open or rests on a food that nobody has confirmed
 * @example sayLine(dish, figures, numbers)
 *   // { ready: true, text: 'One of 4 has about 640 calories and 26 grams of protein.' }
 */
export function sayLine(
  dish: DishFigures,
  portion: { readonly id: string; readonly of: number } | null,
  { region }: Pick<EpisodeFigures, 'region'>,
  numbers: PublishedNumbers,
): SayLine {
  const scope: NumberScope = portion
    ? { kind: 'portion', portionId: portion.id }
    : { kind: 'whole', segmentId: dish.segmentId };
  const figures = portion
    ? dish.portions.find(({ portionId }) => portionId === portion.id)?.figures
    : dish.whole;
  const said = (['energyKcal', 'protein'] as const).map((nutrient) => {
    const figure = figures?.[nutrient];
    const number = numbers(nutrient, scope);
    const words = figure && number.number !== null ? spokenNumber(figure, number.number) : null;
    return { words, range: number.range };
  });
  const [energy, protein] = said.map(({ words }) => words);
  if (energy == null || protein == null) {
    const open = said.filter(({ words }) => words === null).map(({ range }) => range);
    return { ready: false, why: [...new Set(open)].join('; ') };
  }
  const subject = portion && portion.of > 1 ? `One of ${portion.of}` : 'The whole dish';
  const unit = region === 'US' ? 'calories' : 'kilocalories';
  const text = `${subject} has ${energy} ${unit} and ${protein} grams of protein.`;
  return { ready: true, text };
}
