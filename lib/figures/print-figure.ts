import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import {
  figureStatus,
  type Figure,
  type FigureStatus,
  type MissingPart,
} from '#lib/figures/figure';
import { printTo, settled } from '#lib/units/print';

/** A figure in words, ready to show: nothing here is computed again by a page. */
export interface PrintedFigure {
  readonly status: FigureStatus;
  /** The number, "at least 9", "at most 12" or "open". */
  readonly text: string;
  /** The number alone, or null where the figure is open. */
  readonly number: string | null;
  readonly unit: string;
  readonly label: string;
  /** The range in words, or why there is none. */
  readonly range: string;
}

/** Digits shown where nobody chose: whole kcal, kJ, mg; grams whole from 10, else one decimal. */
export function shownStep(nutrient: Nutrient, value: number): number {
  return NUTRIENTS[nutrient].unit === 'g' && value < 10 ? 0.1 : 1;
}

const REASONS: Readonly<Record<MissingPart['reason'], string>> = {
  noLines: 'no ingredients yet in',
  noFood: 'no food chosen for',
  noGrams: 'no grams for',
  noValue: 'no value for',
  noFibre: 'no fibre value for',
  leftBehind: 'more left behind than there was of',
  noDivisor: 'no finished weight for',
  states: 'raw and cooked differ, and no cooked weight is known, for',
  leftNotWeighed: 'not weighed yet what stayed behind of',
  fatLeft: 'nobody knows how much went with the fat of',
  noRetention: 'no published loss in cooking for',
  cycle: 'made from itself:',
};

/**
 * Prints a figure. 'At least' prints its hard lower bound rounded down, 'at most' its hard upper bound rounded
 * up, so that the words stay true.
 * @param step multiple to round to; by the nutrient's own digits if left out
 * @example printFigure(figure).text // '846', with unit 'kcal' and range 'likely 829–863, digits allow 812–880'
 */
export function printFigure(figure: Figure, step?: number): PrintedFigure {
  const { unit, label } = NUTRIENTS[figure.nutrient];
  const used = step ?? shownStep(figure.nutrient, figure.value);
  const status = figureStatus(figure);
  const common = { status, unit, label };
  const print = (value: number) => printTo(value, used);
  switch (status) {
    case 'known': {
      const number = print(figure.value);
      const likely = rangeText(figure.likelyLow, figure.likelyHigh, print);
      const hard = rangeText(figure.low, figure.high, print);
      const range = likely === hard ? `likely ${likely}` : `likely ${likely}, digits allow ${hard}`;
      return { ...common, text: number, number, range };
    }
    case 'atLeast': {
      const number = printTo(roundDown(figure.low ?? 0, used), used);
      return {
        ...common,
        text: `at least ${number}`,
        number,
        range: `at least: ${missingText(figure.missing)}`,
      };
    }
    case 'atMost': {
      const number = printTo(roundUp(figure.high ?? 0, used), used);
      return {
        ...common,
        text: `at most ${number}`,
        number,
        range: `at most: ${missingText(figure.missing)}`,
      };
    }
    case 'open':
      return { ...common, text: 'open', number: null, range: missingText(figure.missing) };
  }
}

function rangeText(
  low: number | null,
  high: number | null,
  print: (value: number) => string,
): string {
  const from = print(low ?? 0);
  const to = print(high ?? 0);
  return from === to ? from : `${from}–${to}`;
}

function roundDown(value: number, step: number): number {
  return Math.floor(settled(value / step)) * step;
}

function roundUp(value: number, step: number): number {
  return Math.ceil(settled(value / step)) * step;
}

/**
 * What is missing, by reason and ingredient: `no value for smoked paprika; no grams for salt to taste`.
 * An ingredient is named once for each reason, and beyond three they are counted.
 */
export function missingText(missing: readonly MissingPart[]): string {
  const byReason = new Map<MissingPart['reason'], Set<string>>();
  for (const part of missing) {
    byReason.set(part.reason, (byReason.get(part.reason) ?? new Set()).add(part.text));
  }
  return [...byReason]
    .map(([reason, texts]) => `${REASONS[reason]} ${someOf([...texts])}`)
    .join('; ');
}

/** How many are named where a sentence lists ingredients. */
const NAMED = 3;

/** The first of a list by name and the others by number. `someOf(['a', 'b', 'c', 'd', 'e'])` → `'a, b, c and 2 more'`. */
export function someOf(texts: readonly string[]): string {
  // One more than fits is named too: "and 1 more" would take the same place.
  if (texts.length <= NAMED + 1) return texts.join(', ');
  return `${texts.slice(0, NAMED).join(', ')} and ${texts.length - NAMED} more`;
}
