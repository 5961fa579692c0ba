import type { EpisodeFile } from '#lib/episode/schema';
import { breakdown } from '#lib/figures/breakdown';
import { namedScopes, scopeText } from '#lib/figures/breakdown-scope';
import { printBreakdown } from '#lib/figures/breakdown-words';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { figureStatus, type FigureStatus } from '#lib/figures/figure';
import {
  confirmedOnly,
  figuresFor,
  publishedNumbers,
  type NumberScope,
} from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';

/** One ingredient of a number. */
export interface EvidenceRow {
  readonly dish: string;
  readonly ingredient: string;
  /** Grams in the state in which the food's value holds, or why there are none. */
  readonly grams: string;
  readonly gramsRange: string;
  readonly foods: readonly {
    readonly name: string;
    readonly source: string;
    readonly value: string;
    readonly range: string;
  }[];
  /** Title of the dish that it is made from; null where it is of a food. */
  readonly madeFrom: string | null;
  /** What it adds, in the number's unit. */
  readonly adds: string;
  readonly range: string;
}

/** A number that is published or was stated, with the table it comes from. */
export interface EvidenceNumber {
  readonly scope: NumberScope;
  readonly title: string;
  readonly part: string;
  readonly nutrient: Nutrient;
  readonly label: string;
  readonly unit: string;
  /** As it is written: "846", "at least 9", "open". */
  readonly text: string;
  readonly range: string;
  readonly status: FigureStatus;
  /** Null where the figure is open. */
  readonly value: number | null;
  readonly low: number | null;
  readonly likelyLow: number | null;
  readonly likelyHigh: number | null;
  readonly high: number | null;
  /** A statement was held against it. */
  readonly stated: boolean;
  readonly working: readonly EvidenceRow[];
}

/**
 * The numbers of every amount of an episode that has any: energy and macros, which are published, and what was stated
 * beside them.
 * @param stated keys of numbers that a statement was held against: scope as text, a blank, the nutrient
 */
export function evidenceNumbers(
  file: EpisodeFile,
  figures: EpisodeFigures,
  stated: ReadonlySet<string>,
): EvidenceNumber[] {
  const numbers = confirmedOnly(publishedNumbers(file, figures));
  const scopes = namedScopes(file);
  // Nutrient by nutrient, since what was worked out for one is kept until the next; told amount by amount.
  const all = figures.nutrients.flatMap((nutrient) =>
    scopes.flatMap(({ scope, title, part }, at) => {
      const isStated = stated.has(`${scopeText(scope)} ${nutrient}`);
      const isPublished = HEADLINE_NUTRIENTS.some((each) => each === nutrient);
      const figure = figuresFor(figures, scope)?.[nutrient];
      if (!figure || (!isStated && !isPublished)) return [];
      const { text, range, label, unit } = numbers(nutrient, scope);
      const status = figureStatus(figure);
      const { low, likelyLow, likelyHigh, high } = figure;
      const number: EvidenceNumber = {
        ...{ scope, title, part, nutrient, label, unit, text, range, status },
        value: status === 'open' ? null : figure.value,
        ...{ low, likelyLow, likelyHigh, high },
        stated: isStated,
        working: workingOf(file, scope, nutrient),
      };
      return [{ at, number }];
    }),
  );
  return all.sort((a, b) => a.at - b.at).map(({ number }) => number);
}

function workingOf(file: EpisodeFile, scope: NumberScope, nutrient: Nutrient): EvidenceRow[] {
  const of = breakdown(file, scope, nutrient);
  if (!of) return [];
  return printBreakdown(of).rows.map(({ row, grams, gramsRange, foods, adds, range }) => ({
    dish: row.dish,
    ingredient: row.text,
    grams,
    gramsRange,
    foods: foods.map(({ name, source, value, range: valueRange }) => ({
      name,
      source,
      value,
      range: valueRange,
    })),
    madeFrom: row.madeFrom?.title ?? null,
    adds,
    range,
  }));
}
