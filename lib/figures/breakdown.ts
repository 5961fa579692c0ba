import { recipeTitles } from '#lib/episode/context';
import type { AmountGap } from '#lib/episode/eaten-amount';
import type { BoundedGap } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { yieldWords } from '#lib/episode/yield-words';
import { figureParts, type RowParts } from '#lib/figures/breakdown-parts';
import { uncertaintyOf, type Cause } from '#lib/figures/breakdown-uncertainty';
import { boundedNutrient } from '#lib/figures/cooking-parts';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure, type ProvisionalPart } from '#lib/figures/figure';
import { basisParts, type Region } from '#lib/figures/line-parts';
import { figureOf } from '#lib/figures/parts';
import { figuresFor, type NumberScope } from '#lib/figures/published-numbers';
import type { Food } from '#lib/foods/food';
import { PROVISIONAL_WORDS } from '#lib/figures/provisional-words';
import type { Nutrient } from '#lib/foods/nutrients';
import { boundsOf, type Bounds } from '#lib/units/bounds';
import { sourceIds } from '#lib/units/sum-of-products';

/** A food's value of a nutrient, as its source states it. */
export interface FoodValue {
  readonly food: Food;
  /** What the value is for. */
  readonly per: '100 g' | '100 ml' | 'serving';
  /** With its bounds, in the region's words; open where the source does not say. */
  readonly value: Figure;
}

/** An ingredient's part of a figure. */
export interface BreakdownRow {
  readonly lineId: string;
  readonly segmentId: string;
  readonly dish: string;
  /** The ingredient as written. */
  readonly text: string;
  /** Its food, or both where it is one of two; none where no food is chosen, or it is a dish. */
  readonly foods: readonly FoodValue[];
  /** The dish that it is made from; null where it is of a food, or that dish is not here. */
  readonly madeFrom: { readonly recipeId: string; readonly title: string } | null;
  /** Milligrams in this amount of the dish, in the state in which the food's value holds. */
  readonly massMg: Bounds | null;
  /** How an amount in another state than the food's came to it, by which yield; empty where it did not have to. */
  readonly turned: string;
  /** Why there are none. */
  readonly gap: AmountGap | null;
  /** What it adds, with bounds; what is missing of it stands in it. */
  readonly contribution: Figure;
  /** Its known part, not cut off at 0: the rows sum to the figure's value. */
  readonly value: number;
  /** Of what is known, 0 to 1; null where the figure has no sum or the ingredient is not known. */
  readonly shareOfTotal: number | null;
  /** Of the likely variance, 0 to 1; null where the figure has no likely range. */
  readonly shareOfUncertainty: number | null;
  readonly causes: ReadonlyMap<Cause, number>;
  /** Words of the other ingredients that share an error with it. */
  readonly sharedWith: readonly string[];
  readonly provisional: boolean;
  /** What it waits for, in words; empty where nothing. */
  readonly waits: string;
  /** Values that its source does not state and that are counted here as a range, up to so much in 100 g. */
  readonly bounded: readonly BoundedGap[];
}

export interface Breakdown {
  readonly scope: NumberScope;
  readonly nutrient: Nutrient;
  readonly region: Region;
  /** Exactly the episode's figure of that scope. */
  readonly figure: Figure;
  readonly rows: readonly BreakdownRow[];
  /** The finished weight's part of the likely variance; null where it divides nothing. */
  readonly finishedShare: number | null;
}

/**
 * The table a figure comes from: ingredient by ingredient its grams, its food's value and source, what it adds,
 * and its share of the total and of the uncertainty. Null where the episode does not have the scope.
 *
 * Laws: the rows' values sum to the figure's value; shares of the total, where there are any, sum to 1; shares of
 * the uncertainty sum to 1 with that of the finished weight. An error that rows share (the same food, one
 * reading, one scale) is split by what each puts in.
 * @example breakdown(file, { kind: 'whole', segmentId }, 'protein')?.rows[0]
 *   // { text: '500 g ground turkey', massMg: { value: 500_000, … }, shareOfTotal: 0.62, … }
 */
export function breakdown(
  file: EpisodeFile,
  scope: NumberScope,
  nutrient: Nutrient,
): Breakdown | null {
  const parts = figureParts(file, scope, nutrient);
  if (!parts) return null;
  const { region } = file.episode;
  // The very figure that stands elsewhere, not one that differs from it in its last digit.
  const figures = episodeFigures(file, [nutrient]);
  const figure = figuresFor(figures, scope)?.[nutrient] ?? figureOf(nutrient, parts.total);
  const known = figureStatus(figure) === 'known';
  const uncertainty = known
    ? uncertaintyOf(
        parts.rows.map((row) => row.parts),
        parts.total,
        parts.divisors,
      )
    : null;
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const titles = recipeTitles(file);
  const valueOf = valuesOnce(nutrient, region);
  const rows = parts.rows.map((row, index): BreakdownRow => {
    const { dish, line, eaten, massMg } = row;
    const own = uncertainty?.rows[index];
    const { value } = boundsOf(row.parts.terms, row.parts.sources);
    const named = [line.foodId, line.orFoodId].flatMap((id) => foods.get(id ?? '') ?? []);
    return {
      lineId: line.id,
      segmentId: dish.id,
      dish: dish.title,
      text: line.text,
      foods: named.map(valueOf),
      madeFrom: dishOf(line.madeFrom, titles),
      massMg: massMg.terms.length > 0 ? boundsOf(massMg.terms, massMg.sources) : null,
      turned: turnedWords(named, line),
      gap: eaten && !eaten.known ? eaten.gap : null,
      contribution: figureOf(nutrient, row.parts),
      value,
      shareOfTotal: shareOfTotal(row, value, figure),
      shareOfUncertainty: own?.share ?? null,
      causes: own?.causes ?? new Map(),
      sharedWith: (own?.sharedWith ?? []).flatMap((at) => parts.rows[at]?.line.text ?? []),
      provisional: row.parts.provisional.length > 0,
      waits: waitsOf(row.parts.provisional),
      bounded: boundedIn(row.parts),
    };
  });
  const finishedShare = uncertainty && parts.divisors.size > 0 ? uncertainty.divisor : null;
  return { scope, nutrient, region, figure, rows, finishedShare };
}

/** Shares are of the known sum; a figure that is open, at most, or nothing at all is not shared out. */
function shareOfTotal({ parts }: RowParts, value: number, figure: Figure): number | null {
  const status = figureStatus(figure);
  if ((status !== 'known' && status !== 'atLeast') || !(figure.value > 0)) return null;
  const lacks = parts.above.length + parts.below.length + parts.open.length > 0;
  return lacks && parts.terms.length === 0 ? null : value / figure.value;
}

function turnedWords(foods: readonly Food[], line: RowParts['line']): string {
  return [...new Set(foods.flatMap((food) => yieldWords(food, line) ?? []))].join(' or ');
}

function dishOf(
  madeFrom: RowParts['line']['madeFrom'],
  titles: ReadonlyMap<string, string>,
): BreakdownRow['madeFrom'] {
  if (!madeFrom) return null;
  const title = titles.get(madeFrom.recipeId);
  return title === undefined ? null : { recipeId: madeFrom.recipeId, title };
}

/** Which bounded values a part rests on. */
function boundedIn({ terms, sources }: RowParts['parts']): readonly BoundedGap[] {
  return sourceIds(terms).flatMap((id) => {
    const nutrient = boundedNutrient(id);
    return nutrient ? [{ nutrient, maxPer100: sources.get(id)?.high ?? 0 }] : [];
  });
}

/** A food's value, worked out once however many ingredients it is in. */
function valuesOnce(nutrient: Nutrient, region: Region): (food: Food) => FoodValue {
  const known = new Map<string, FoodValue>();
  return (food) => {
    const found = known.get(food.id);
    if (found) return found;
    const { per, parts } = basisParts(food, nutrient, region);
    const value: FoodValue = { food, per, value: figureOf(nutrient, parts) };
    known.set(food.id, value);
    return value;
  };
}

function waitsOf(provisional: readonly ProvisionalPart[]): string {
  const kinds = new Set(provisional.map(({ why }) => PROVISIONAL_WORDS[why]));
  return [...kinds].join('; ');
}
