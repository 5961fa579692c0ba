import type { Verdict } from '#lib/claims/judged';
import type { SaidInterval } from '#lib/claims/said-interval';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { printFigure } from '#lib/figures/print-figure';
import { publishedStep } from '#lib/figures/published-numbers';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { settled } from '#lib/units/print';
import { holdFigure, isAllowed } from './hold-figure';
import type { JudgeContext } from './judge-context';
import type { Meaning } from './meaning';
import { amountText } from './nutrient-words';
import type { NutrientStatement } from './said-number';
import { energyShare, scaledFigure } from './stated-unit';

/** A statement with what is the same for all that it may be of. */
export interface Stated {
  readonly statement: NutrientStatement;
  /** Own units of the nutrient in one of the stated unit. */
  readonly factor: number;
  readonly spoken: boolean;
  readonly context: JudgeContext;
}

/** One thing that a statement may be of, with what that says of it. */
export interface Held {
  readonly meaning: Meaning;
  readonly verdict: Verdict;
  /** In the stated unit; null where there is none. */
  readonly figure: Figure | null;
  readonly possible: boolean;
  readonly tally: boolean;
  readonly cause: string | null;
}

/** Holds what was said against one thing that it may be of. */
export function hold(meaning: Meaning, said: SaidInterval, stated: Stated): Held {
  const { statement, context } = stated;
  const none = { meaning, figure: null, possible: false, tally: false };
  if (!meaning.figures) {
    return { ...none, verdict: 'unknown', cause: meaning.cause ?? 'nothing is known of it' };
  }
  const figure = statedFigure(meaning, stated);
  if (!figure) return { ...none, verdict: 'unknown', cause: 'it is not counted' };
  const tally = isPublished(meaning, figure, stated);
  const { verdict, possible } = holdFigure(said, statement.hedge, figure);
  const own = meaning.figures[statement.nutrient] ?? figure;
  const cause = verdict === 'unknown' ? causeOf(own, context) : null;
  return { meaning, figure, tally, possible, cause, verdict: tally ? 'agrees' : verdict };
}

const kept = new WeakMap<Meaning, Map<string, Figure | null>>();

/** The figure in the unit in which it was stated. */
export function statedFigure(meaning: Meaning, { statement, factor }: Stated): Figure | null {
  const { nutrient, unit } = statement;
  const own = kept.get(meaning) ?? new Map<string, Figure | null>();
  kept.set(meaning, own);
  const key = `${nutrient} ${unit}`;
  const known = own.get(key);
  if (known !== undefined) return known;
  const figure = meaning.figures?.[nutrient];
  const energy = meaning.figures?.energyKcal;
  const made =
    unit === '%'
      ? figure && energy && energyShare(figure, energy)
      : figure && scaledFigure(figure, meaning.share / factor);
  own.set(key, made ?? null);
  return made ?? null;
}

/** Whether it is the number that is published for it, or was said of it in front of the camera as it stands. */
function isPublished(meaning: Meaning, figure: Figure, stated: Stated): boolean {
  const { statement, factor, context } = stated;
  const { low, high, hedge, nutrient, unit } = statement;
  if (hedge !== 'none' || low !== high || unit === '%' || unit === '%DV') return false;
  if (figureStatus(figure) !== 'known' || !meaning.published) return false;
  const number = context.numbers(nutrient, meaning.published);
  if (!number || number.number === null || number.clashes || number.said?.outside) return false;
  const amount = settled(low * factor);
  if (settled(Number(number.number)) !== amount) return false;
  // A number that adds up only because of rounding is published all the same, and says so.
  if (number.onlyByRounding) return true;
  const half = publishedStep(nutrient, context.file.episode.energyStep) / 2 / factor;
  const printed = { from: low - half, to: low + half, fromOpen: false, toOpen: false };
  return isAllowed({ ...printed, oneSided: false }, figure);
}

function causeOf(figure: Figure, { figures }: JudgeContext): string {
  const { text, range } = printFigure(figure);
  if (figureStatus(figure) === 'open') return `the number is open: ${range}`;
  const { unit } = NUTRIENTS[figure.nutrient];
  const known = amountText(text, figure.nutrient, unit, figures.region);
  return `your breakdown has ${known}, ${range.replace(/^at (?:least|most): /, '')}`;
}
