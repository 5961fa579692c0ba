import { saidInterval, type SaidInterval } from '#lib/claims/said-interval';
import type { Hedge, NutrientUnit } from '#lib/claims/statement';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { aboutTolerance } from '#lib/figures/judge-limit';
import { spokenStep } from '#lib/figures/say-line';
import { printCount, printTo, roundTo, settled } from '#lib/units/print';
import { holdFigure } from './hold-figure';
import { statedStep } from './nutrient-words';

/** What is right to say in the place of a number, as hedged as it was. */
export interface RightNumber {
  /** 'about 610', 'at least 40', 'between 46 and 48'. */
  readonly text: string;
  readonly low: number;
  readonly high: number;
  readonly hedge: Hedge;
}

interface Stated {
  readonly hedge: Hedge;
  readonly unit: NutrientUnit;
  /** Own units of the nutrient in one of the stated unit. */
  readonly factor: number;
  /** What is published of it, in the stated unit; null where none is. */
  readonly published: number | null;
  /** What was said, in the stated unit: nothing is proposed that is farther off. Left out where it was a range. */
  readonly said?: number;
}

/**
 * The right words in the place of a number: as hedged as it was, and no finer than its likely range supports. Whatever
 * is proposed agrees with the figure by the same measure. Null where nothing can be said of it, or an ingredient in it
 * waits for the person’s word.
 * @param figure in the stated unit
 * @example rightNumber(figure612, { hedge: 'about', … }).text // 'about 610'
 */
export function rightNumber(figure: Figure, stated: Stated): RightNumber | null {
  if (figure.provisional.length > 0) return null;
  return (
    proposals(figure, stated).find(
      (each) => agrees(each, figure, stated) && !isFarther(each, figure, stated),
    ) ?? null
  );
}

/** Of a number that is not one-sided: whether it is farther from the value than what was said, which may be near it. */
function isFarther({ hedge, low }: RightNumber, { value }: Figure, { said, published }: Stated) {
  if (said === undefined || (hedge !== 'none' && hedge !== 'about')) return false;
  if (hedge === 'none' && low === published) return false;
  return settled(Math.abs(low - value)) > settled(Math.abs(said - value));
}

function proposals(figure: Figure, stated: Stated): RightNumber[] {
  const status = figureStatus(figure);
  if (status === 'open') return [];
  if (status === 'atLeast') return atLeast(figure);
  if (status === 'atMost') return atMost(figure, 'atMost');
  switch (stated.hedge) {
    case 'atLeast':
      return atLeast(figure);
    case 'atMost':
    case 'under':
      return atMost(figure, stated.hedge);
    case 'between':
      return between(figure, stated);
    case 'none':
      return [...plain(figure, stated), ...abouts(figure, stated)];
    case 'about':
    case 'justOver':
    case 'almost':
      return [...abouts(figure, stated), ...plain(figure, stated)];
  }
}

const STEPS = [500, 100, 50, 10, 5, 1] as const;

/** From as coarse as the likely range supports to whole units, and tenths of small grams. */
function stepsFor({ likelyLow, likelyHigh, value }: Figure, unit: NutrientUnit): number[] {
  const supported = spokenStep(((likelyHigh ?? 0) - (likelyLow ?? 0)) / 2);
  const steps = STEPS.filter((step) => step <= supported);
  return unit === 'g' && value < 10 ? [...steps, 0.5, 0.1] : steps;
}

function abouts(figure: Figure, { unit }: Stated): RightNumber[] {
  return stepsFor(figure, unit).flatMap((step) => {
    const amount = roundTo(figure.value, step);
    return amount === 0 ? [] : [one('about', 'about ', amount, step)];
  });
}

/** As it stands, only where its range supports whole units. */
function plain(figure: Figure, { unit, published }: Stated): RightNumber[] {
  const [coarsest = 1] = stepsFor(figure, unit);
  if (coarsest > 1) return [];
  const exact = published === null ? [] : [one('none', '', published, 1)];
  const steps = unit === 'g' && figure.value < 10 ? [1, 0.1] : [1];
  return [...exact, ...steps.map((step) => one('none', '', roundTo(figure.value, step), step))];
}

function atLeast({ likelyLow, low }: Figure): RightNumber[] {
  const known = likelyLow ?? low ?? 0;
  return [1, 0.1].flatMap((step) => {
    const amount = settled(Math.floor(settled(known / step)) * step);
    return amount > 0 ? [one('atLeast', 'at least ', amount, step)] : [];
  });
}

function atMost({ likelyHigh, high }: Figure, hedge: 'atMost' | 'under'): RightNumber[] {
  const known = likelyHigh ?? high ?? 0;
  const up = Math.ceil(settled(known));
  const amount = hedge === 'under' && up <= settled(known) ? up + 1 : up;
  return amount > 0 ? [one(hedge, hedge === 'under' ? 'under ' : 'at most ', amount, 1)] : [];
}

function between({ likelyLow, likelyHigh, value }: Figure, { unit }: Stated): RightNumber[] {
  const step = statedStep(unit, value);
  const low = settled(Math.floor(settled((likelyLow ?? value) / step)) * step);
  const high = settled(Math.ceil(settled((likelyHigh ?? value) / step)) * step);
  if (low === high) return [one('none', '', low, step)];
  const text = `between ${print(low, step)} and ${print(high, step)}`;
  return [{ text, low, high, hedge: 'between' }];
}

function one(hedge: Hedge, words: string, amount: number, step: number): RightNumber {
  return { text: words + print(amount, step), low: amount, high: amount, hedge };
}

const print = (amount: number, step: number) =>
  Number.isInteger(amount) ? printCount(amount) : printTo(amount, Math.min(step, 0.1));

function agrees(right: RightNumber, figure: Figure, stated: Stated): boolean {
  // What was published may miss the value by its rounding, and is still the number to say.
  if (right.hedge === 'none' && right.low === stated.published) return true;
  return holdFigure(rightInterval(right, figure, stated), right.hedge, figure).verdict === 'agrees';
}

/** As it would be judged if it were written. */
function rightInterval(right: RightNumber, figure: Figure, { factor }: Stated): SaidInterval {
  const written = { ...right, words: right.text, start: 0, how: [] };
  return saidInterval(written, {
    spoken: false,
    about: (value) => settled(aboutTolerance(figure.nutrient, settled(value * factor)) / factor),
  });
}
