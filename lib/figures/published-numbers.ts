import type { Nutrient } from '#lib/foods/nutrients';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures, Figures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { tally, type TallyNode } from '#lib/figures/tally';
import { printTo } from '#lib/units/print';

/** A number as it is written and said everywhere, with the remark that it may need. */
export interface PublishedNumber extends PrintedFigure {
  readonly onlyByRounding: boolean;
}

export type NumberScope =
  | { readonly kind: 'day' }
  | { readonly kind: 'whole' | 'eaten' | 'per100g'; readonly segmentId: string }
  | { readonly kind: 'portion'; readonly portionId: string };

/** Looks up the one printed form of a figure; throws for a scope the episode does not have. */
export type PublishedNumbers = (nutrient: Nutrient, scope: NumberScope) => PublishedNumber;

/** What published numbers are rounded to: whole kcal, kJ and grams, 10 mg of sodium, 0.1 g of salt. */
export function publishedStep(nutrient: Nutrient): number {
  if (nutrient === 'salt') return 0.1;
  if (nutrient === 'sodium') return 10;
  return 1;
}

/**
 * The numbers of an episode as they are published: one printed form for each scope and nutrient, so that
 * they agree wherever they appear and segments add up to the day. A nutrient that is incomplete anywhere
 * is not tallied: its numbers are rounded alone, 'at least' downwards.
 * Equal portions print one number, the dish divided, and are not tied to the sum.
 */
export function publishedNumbers(file: EpisodeFile, figures: EpisodeFigures): PublishedNumbers {
  const tallied = new Map<string, { printed: number; onlyByRounding: boolean }>();
  for (const nutrient of figures.nutrients) {
    for (const [id, number] of talliedNumbers(figures, nutrient)) {
      tallied.set(`${nutrient}:${id}`, number);
    }
  }
  const wholeIsEaten = new Set(
    file.episode.segments
      .filter((segment) => segment.eaten.num === segment.eaten.den)
      .map((segment) => segment.id),
  );
  return (nutrient, scope) => {
    const figure = figureFor(figures, nutrient, scope);
    const printed = printFigure(figure, publishedStep(nutrient));
    const key = keyOf(scope, wholeIsEaten);
    const number = key === null ? undefined : tallied.get(`${nutrient}:${key}`);
    if (!number) return { ...printed, onlyByRounding: false };
    const text = printTo(number.printed, publishedStep(nutrient));
    return { ...printed, text, number: text, onlyByRounding: number.onlyByRounding };
  };
}

const DAY = 'day';

function talliedNumbers(figures: EpisodeFigures, nutrient: Nutrient) {
  const node = (id: string, of: Figures, children: TallyNode[]): TallyNode | null => {
    const figure = of[nutrient];
    if (!figure || figureStatus(figure) !== 'known') return null;
    const { value, low, high } = figure;
    return { id, value, low: low ?? 0, high: high ?? value, fixed: null, children };
  };
  const children = figures.dishes.map((dish) => node(`eaten:${dish.segmentId}`, dish.eaten, []));
  const complete = children.filter((child): child is TallyNode => child !== null);
  const root = complete.length === children.length ? node(DAY, figures.day, complete) : null;
  return root ? tally(root, publishedStep(nutrient)).numbers : [];
}

function keyOf(scope: NumberScope, wholeIsEaten: ReadonlySet<string>): string | null {
  switch (scope.kind) {
    case 'day':
      return DAY;
    case 'eaten':
      return `eaten:${scope.segmentId}`;
    case 'whole':
      return wholeIsEaten.has(scope.segmentId) ? `eaten:${scope.segmentId}` : null;
    case 'per100g':
    case 'portion':
      return null;
  }
}

function figureFor(figures: EpisodeFigures, nutrient: Nutrient, scope: NumberScope): Figure {
  const found = figuresFor(figures, scope)?.[nutrient];
  if (!found) throw new Error(`no figure for ${nutrient} in ${JSON.stringify(scope)}`);
  return found;
}

function figuresFor(figures: EpisodeFigures, scope: NumberScope): Figures | null | undefined {
  if (scope.kind === 'day') return figures.day;
  if (scope.kind === 'portion') {
    return figures.dishes
      .flatMap((dish) => dish.portions)
      .find((portion) => portion.portionId === scope.portionId)?.figures;
  }
  const dish = figures.dishes.find((each) => each.segmentId === scope.segmentId);
  return dish?.[scope.kind];
}
