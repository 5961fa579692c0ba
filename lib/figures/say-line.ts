import type { Portion } from '#lib/episode/recipe-schema';
import type { EnergyStep } from '#lib/episode/schema';
import type { DishFigures, EpisodeFigures, Figures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import type {
  NumberScope,
  PublishedNumber,
  PublishedNumbers,
} from '#lib/figures/published-numbers';
import { hedgeWord } from '#lib/figures/spoken-numbers';
import { printCount, printGrams, roundTo, settled } from '#lib/units/print';

/** How closely a number is said. */
export type Hedge = 'exact' | 'about' | 'atLeast' | 'atMost';

/** A number of a line: as it is said, and what it was made of. */
export interface SayNumber {
  readonly nutrient: 'energyKcal' | 'protein';
  /** The number in the words, in the nutrient's unit. */
  readonly amount: number;
  readonly hedge: Hedge;
  /** The figure's value; null where it has no upper bound. */
  readonly value: number | null;
}

/** A sentence to say or copy about one amount of a dish, or why there is none yet. */
export type SayLine =
  | {
      readonly ready: true;
      readonly text: string;
      /** The numbers in it, in the order of the words. */
      readonly numbers: readonly SayNumber[];
      /** For an odd gram halved: both ways to say it. */
      readonly halved: string | null;
      /** Where the person chose more digits than the likely range supports. */
      readonly remark: string | null;
    }
  | { readonly ready: false; readonly why: string };

/** A line to say with what it is about, as a key that is unique within the episode. */
export interface KeyedLine {
  readonly key: string;
  readonly line: SayLine;
}

export interface SayOptions {
  /** What calories are rounded to; what their likely range supports if left out. */
  readonly energyStep?: EnergyStep | undefined;
}

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
 * whole units, 'at least' rounded down, 'at most' where rounding would leave nothing of it. Null where it is
 * open, or can only be called 'at most'.
 * @param published the whole number that is written of it; said as it stands where whole units are
 * @param chosen a step that the person chose instead, which may be finer than the range supports
 * @example spokenNumber(energy, '1285') // 'about 1,300' where the likely range is 1248 to 1322
 */
export function spokenNumber(figure: Figure, published: string, chosen?: number): string | null {
  const spoken = spokenAmount(figure, published, chosen);
  return spoken && hedgeWord(spoken.hedge) + printCount(spoken.amount);
}

/** The number that `spokenNumber` puts into words. `spokenAmount(energy, '1285')` → 1300, about */
function spokenAmount(
  figure: Figure,
  published: string,
  chosen?: number,
): Pick<SayNumber, 'amount' | 'hedge'> | null {
  const status = figureStatus(figure);
  if (status === 'atLeast') {
    const step = chosen ?? 1;
    const amount = Math.floor(settled((figure.low ?? 0) / step)) * step;
    return { amount, hedge: 'atLeast' };
  }
  if (status !== 'known') return null;
  const step = chosen ?? supportedStep(figure);
  if (step === 1) return { amount: Number(published), hedge: 'exact' };
  const rounded = roundTo(figure.value, step);
  if (rounded !== 0) return { amount: rounded, hedge: 'about' };
  return { amount: Math.ceil(settled((figure.high ?? 0) / step)) * step, hedge: 'atMost' };
}

function supportedStep({ likelyLow, likelyHigh }: Figure): number {
  return spokenStep(((likelyHigh ?? 0) - (likelyLow ?? 0)) / 2);
}

/**
 * The line to say of a dish: energy and protein of one equal portion where there are any, else of all of it.
 * @returns why not, while a number in it is open or rests on a food that nobody has confirmed
 * @example sayLine(dish, { id, of: 4 }, figures, numbers)
 *   // { ready: true, text: 'One of 4 has about 640 calories and 26 grams of protein.', … }
 */
export function sayLine(
  dish: DishFigures,
  portion: { readonly id: string; readonly of: number } | null,
  { region }: Pick<EpisodeFigures, 'region'>,
  numbers: PublishedNumbers,
  options: SayOptions = {},
): SayLine {
  const scope: NumberScope = portion
    ? { kind: 'portion', portionId: portion.id }
    : { kind: 'whole', segmentId: dish.segmentId };
  const of = portion
    ? dish.portions.find(({ portionId }) => portionId === portion.id)?.figures
    : dish.whole;
  const subject = portion && portion.of > 1 ? `One of ${portion.of} has` : 'The whole dish has';
  const halved = portion?.of === 2 ? halvedProtein(dish, numbers) : null;
  return lineOf(subject, of, (nutrient) => numbers(nutrient, scope), region, options, halved);
}

/**
 * Every line of a dish: all of it, each of its portions, and half of it where no portion is that.
 * @example sayLines(dish, recipe.portions, figures, numbers).map(({ line }) => line.ready && line.text)
 */
export function sayLines(
  dish: DishFigures,
  portions: readonly Portion[],
  figures: Pick<EpisodeFigures, 'region'>,
  numbers: PublishedNumbers,
  options: SayOptions = {},
): KeyedLine[] {
  const { region } = figures;
  const lines: KeyedLine[] = [
    { key: `whole-${dish.segmentId}`, line: sayLine(dish, null, figures, numbers, options) },
  ];
  for (const portion of portions) {
    if (portion.kind === 'count') {
      if (portion.of === 1) continue;
      const line = sayLine(dish, portion, figures, numbers, options);
      lines.push({ key: portion.id, line });
      continue;
    }
    const of = dish.portions.find(({ portionId }) => portionId === portion.id)?.figures;
    const scope = { kind: 'portion', portionId: portion.id } as const;
    const subject =
      portion.kind === 'mass'
        ? `A portion of ${printGrams(portion.massMg)} grams has`
        : `${portion.name === '' ? 'A portion' : portion.name.charAt(0).toUpperCase() + portion.name.slice(1)}, by eye, has`;
    const line = lineOf(subject, of, (nutrient) => numbers(nutrient, scope), region, options, null);
    lines.push({ key: portion.id, line });
  }
  if (!portions.some((portion) => portion.kind === 'count' && portion.of === 2)) {
    lines.push({ key: `half-${dish.segmentId}`, line: halfLine(dish, region, numbers, options) });
  }
  return lines;
}

/**
 * The line of the day; until the person has said what else was eaten it is of the dishes shown.
 * @example sayDay(figures, numbers) // 'The dishes shown have about 1,900 calories and 121 grams of protein.'
 */
export function sayDay(
  figures: Pick<EpisodeFigures, 'region' | 'day' | 'dayIsWhole'>,
  numbers: PublishedNumbers,
  options: SayOptions = {},
): SayLine {
  const subject = figures.dayIsWhole ? 'The whole day has' : 'The dishes shown have';
  const of = (nutrient: Said) => numbers(nutrient, { kind: 'day' });
  return lineOf(subject, figures.day, of, figures.region, options, null);
}

/**
 * The line of the day as far as it has come: of the dishes that `figures` has, while others are to follow.
 * @example saySoFar(figuresOfTheFirstTwo, numbers) // 'So far the day has about 1,300 calories and …'
 */
export function saySoFar(
  figures: Pick<EpisodeFigures, 'region' | 'day'>,
  numbers: PublishedNumbers,
  options: SayOptions = {},
): SayLine {
  const of = (nutrient: Said) => numbers(nutrient, { kind: 'day' });
  return lineOf('So far the day has', figures.day, of, figures.region, options, null);
}

type Said = SayNumber['nutrient'];

function lineOf(
  subject: string,
  figures: Figures | null | undefined,
  published: (nutrient: Said) => Pick<PublishedNumber, 'number' | 'range'>,
  region: EpisodeFigures['region'],
  { energyStep }: SayOptions,
  halved: string | null,
): SayLine {
  const say = (nutrient: Said, chosen?: number) => {
    const figure = figures?.[nutrient];
    const { number, range } = published(nutrient);
    const words = figure && number !== null ? spokenNumber(figure, number, chosen) : null;
    const amount = figure && number !== null ? spokenAmount(figure, number, chosen) : null;
    const value = figure && figureStatus(figure) === 'known' ? figure.value : null;
    return { words, range, numbers: amount ? [{ nutrient, ...amount, value }] : [] };
  };
  const said = [say('energyKcal', energyStep), say('protein')];
  const [energy, protein] = said.map(({ words }) => words);
  if (energy == null || protein == null) {
    const open = said.filter(({ words }) => words === null).map(({ range }) => range);
    return { ready: false, why: [...new Set(open)].join('; ') };
  }
  const unit = region === 'US' ? 'calories' : 'kilocalories';
  const text = `${subject} ${energy} ${unit} and ${protein} grams of protein.`;
  const figure = figures?.energyKcal;
  const remark = figure ? tooFine(figure, unit, energyStep) : null;
  return { ready: true, text, numbers: said.flatMap(({ numbers }) => numbers), halved, remark };
}

/** A step that the person chose although the likely range does not support it. */
function tooFine(figure: Figure, unit: string, chosen: number | undefined): string | null {
  const supported = supportedStep(figure);
  if (chosen === undefined || figureStatus(figure) !== 'known' || chosen >= supported) return null;
  const [low, high] = [figure.likelyLow ?? 0, figure.likelyHigh ?? 0].map(printCount);
  return `More digits than its likely range supports: ${low} to ${high} ${unit}.`;
}

function halfLine(
  dish: DishFigures,
  region: EpisodeFigures['region'],
  numbers: PublishedNumbers,
  options: SayOptions,
): SayLine {
  const whole = (nutrient: Said) => dish.whole[nutrient];
  const half = (figure: Figure | undefined): Figure | null => (figure ? halfOf(figure) : null);
  const [energyKcal, protein] = [half(whole('energyKcal')), half(whole('protein'))];
  const figures: Figures = { ...(energyKcal && { energyKcal }), ...(protein && { protein }) };
  const published = (nutrient: Said) => {
    const { number, range } = numbers(nutrient, { kind: 'whole', segmentId: dish.segmentId });
    const value = figures[nutrient]?.value ?? 0;
    return { number: number === null ? null : String(roundTo(value, 1)), range };
  };
  return lineOf(
    'Half of it has',
    figures,
    published,
    region,
    options,
    halvedProtein(dish, numbers),
  );
}

/** One of two is an exact share: every bound is halved. */
function halfOf(figure: Figure): Figure {
  const half = (value: number | null) => (value === null ? null : value / 2);
  return {
    ...figure,
    value: figure.value / 2,
    low: half(figure.low),
    high: half(figure.high),
    likelyLow: half(figure.likelyLow),
    likelyHigh: half(figure.likelyHigh),
  };
}

/**
 * Both ways to say the half of an odd number of grams of protein; the half gram only where the likely range
 * supports it, and nothing where whole grams of the dish are already more than it supports.
 */
function halvedProtein(dish: DishFigures, numbers: PublishedNumbers): string | null {
  const figure = dish.whole.protein;
  const { number } = numbers('protein', { kind: 'whole', segmentId: dish.segmentId });
  if (!figure || number === null || figureStatus(figure) !== 'known') return null;
  const grams = Number(number);
  if (grams % 2 !== 1 || supportedStep(figure) > 1) return null;
  const less = (grams - 1) / 2;
  const parts = `${printCount(less)} and ${printCount(less + 1)}`;
  const { likelyLow, likelyHigh, value } = halfOf(figure);
  const finer = (likelyHigh ?? 0) - (likelyLow ?? 0) < 1 && roundTo(value, 0.5) === grams / 2;
  if (!finer) return `${printCount(grams)} grams halved: ${parts}.`;
  const half = less === 0 ? 'half a gram' : `${printCount(less)} and a half grams`;
  return `${printCount(grams)} grams halved: ${half}, or ${parts}.`;
}
