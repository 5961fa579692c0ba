import { amountContext, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount, type EatenAmount } from '#lib/episode/eaten-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { DishFigures, Figures, LineFigures } from '#lib/figures/episode-figures';
import { addParts, figureOf, NOTHING, type Parts } from '#lib/figures/parts';
import { ingredientParts, recipeParts } from '#lib/figures/recipe-parts';
import type { Nutrient } from '#lib/foods/nutrients';

/** A part of a dish as a function of all of it. */
export type Taking = (whole: Parts) => Parts;

/** How the figures of an episode are worked out: by terms, which define them, or by what was compiled from these. */
export interface Reckoning {
  /** What a dish comes to, put together by `work`; that of before where nothing in it has changed. */
  readonly dish: (dish: Dish, work: (of: DishReckoning) => WorkedDish) => WorkedDish;
  /** The figures of parts of dishes together. */
  readonly together: (parts: readonly { readonly dish: Dish; readonly share: Taking }[]) => Figures;
}

/** A dish with all its figures, and the part of it that counts to the day. */
export interface WorkedDish {
  readonly figures: DishFigures;
  readonly eaten: Taking;
}

export interface DishReckoning {
  readonly context: AmountContext;
  /** The figures of a part of the dish. */
  readonly part: (share: Taking) => Figures;
  /** The rows of its ingredients, put together by `row`; those of before where nothing in them has changed. */
  readonly lines: (row: RowOf) => readonly LineFigures[];
}

/** Puts the row of an ingredient together. */
export type RowOf = (line: RecipeLine, eaten: EatenAmount, figures: () => Figures) => LineFigures;

/** Works everything out by terms, nutrient by nutrient: the definition of every figure. */
export function byTerms(file: EpisodeFile, nutrients: readonly Nutrient[]): Reckoning {
  const context = amountContext(file);
  const { region } = file.episode;
  const wholes = new Map<Dish, ReadonlyMap<Nutrient, Parts>>();
  const wholeOf = (dish: Dish, nutrient: Nutrient): Parts => {
    const known =
      wholes.get(dish) ??
      new Map(
        nutrients.map((each) => [
          each,
          recipeParts(dish.recipe, dish.title, context, each, region),
        ]),
      );
    wholes.set(dish, known);
    return known.get(nutrient) ?? NOTHING;
  };
  const figures = (parts: (nutrient: Nutrient) => Parts): Figures =>
    Object.fromEntries(nutrients.map((each) => [each, figureOf(each, parts(each))]));
  return {
    dish: (dish, work) =>
      work({
        context,
        part: (share) => figures((nutrient) => share(wholeOf(dish, nutrient))),
        lines: (row) =>
          dish.recipe.lines.map((line) =>
            row(line, eatenAmount(line, dish.recipe.weighings, context), () =>
              figures((nutrient) => ingredientParts(line, dish.recipe, context, nutrient, region)),
            ),
          ),
      }),
    together: (parts) =>
      figures((nutrient) =>
        addParts(parts.map(({ dish, share }) => share(wholeOf(dish, nutrient)))),
      ),
  };
}
