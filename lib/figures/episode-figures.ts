import type { Nutrient } from '#lib/foods/nutrients';
import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount, type AmountGap } from '#lib/episode/eaten-amount';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Figure } from '#lib/figures/figure';
import { finishedWeight } from '#lib/episode/finished-weight';
import { shareByMass } from '#lib/figures/finished-weight';
import type { Region } from '#lib/figures/line-parts';
import { addParts, figureOf, NOTHING, type Parts } from '#lib/figures/parts';
import { ingredientParts, recipeParts } from '#lib/figures/recipe-parts';
import { eatenShare, portionShare } from '#lib/figures/shares';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import { boundsOf, type Bounds } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';

export type Figures = Partial<Readonly<Record<Nutrient, Figure>>>;

/** One row of the breakdown: an ingredient, its grams, its source and what it adds. */
export interface LineFigures {
  readonly lineId: string;
  readonly text: string;
  readonly foodId: string | null;
  readonly foodName: string | null;
  /** Who states the composition, as in "USDA SR28 05665". Null without a food. */
  readonly source: string | null;
  /** Grams eaten in milligrams, in the state the food's composition holds; null where unknown. */
  readonly eatenMg: Bounds | null;
  /** Why the grams are unknown, if they are. */
  readonly gap: AmountGap | null;
  readonly figures: Figures;
}

export interface PortionFigures {
  readonly portionId: string;
  readonly name: string;
  readonly figures: Figures;
}

export interface DishFigures {
  readonly segmentId: string;
  readonly title: string;
  readonly whole: Figures;
  /** Per 100 g of the finished dish; null without a finished weight. */
  readonly per100g: Figures | null;
  /** Weight of the finished dish, or null until it is weighed. */
  readonly finishedMg: Interval | null;
  readonly portions: readonly PortionFigures[];
  /** The part that counts to the day. */
  readonly eaten: Figures;
  readonly lines: readonly LineFigures[];
}

export interface EpisodeFigures {
  readonly region: Region;
  readonly nutrients: readonly Nutrient[];
  readonly dishes: readonly DishFigures[];
  readonly day: Figures;
  /** True once the person has said what else was eaten; until then the day reads "the dishes shown". */
  readonly dayIsWhole: boolean;
}

/**
 * Every figure of an episode with its breakdown: per ingredient, dish, portion and day.
 *
 * @param file the plain data of the episode with its foods and kitchen
 * @param nutrients which to compute; the region's panel and what targets and sentences ask for, unless given
 * @example episodeFigures(file).dishes[0].whole.protein // { value: 71.3, low: 69.9, high: 72.7, … }
 */
export function episodeFigures(
  file: EpisodeFile,
  nutrients: readonly Nutrient[] = countedNutrients(file.episode),
): EpisodeFigures {
  const context = amountContext(file);
  const { region, segments, anythingElse } = file.episode;
  const dishes = dishesOf(segments);
  const partsOf = (nutrient: Nutrient) =>
    dishes.map((dish) => recipeParts(dish.recipe, dish.title, context, nutrient, region));
  const byNutrient = new Map(nutrients.map((nutrient) => [nutrient, partsOf(nutrient)]));
  return {
    region,
    nutrients,
    dishes: dishes.map((dish, index) =>
      dishFigures(
        dish,
        context,
        region,
        (nutrient) => byNutrient.get(nutrient)?.[index] ?? NOTHING,
        nutrients,
      ),
    ),
    day: figuresOf(nutrients, (nutrient) => {
      if (dishes.length === 0) return withoutDishes(file);
      return addParts(
        dishes.map((dish, index) =>
          eatenShare(dish, finishedWeight(dish.recipe, context)).share(
            byNutrient.get(nutrient)?.[index] ?? NOTHING,
          ),
        ),
      );
    }),
    dayIsWhole: anythingElse?.kind === 'nothing',
  };
}

function figuresOf(nutrients: readonly Nutrient[], parts: (nutrient: Nutrient) => Parts): Figures {
  return Object.fromEntries(
    nutrients.map((nutrient) => [nutrient, figureOf(nutrient, parts(nutrient))]),
  );
}

/** A day without any dish is open, not nothing eaten. */
function withoutDishes({ episode }: EpisodeFile): Parts {
  return { ...NOTHING, open: [{ lineId: episode.id, text: episode.title, reason: 'noLines' }] };
}

function dishFigures(
  dish: Dish,
  context: AmountContext,
  region: Region,
  whole: (nutrient: Nutrient) => Parts,
  nutrients: readonly Nutrient[],
): DishFigures {
  const finished = finishedWeight(dish.recipe, context);
  return {
    segmentId: dish.id,
    title: dish.title,
    whole: figuresOf(nutrients, whole),
    per100g: finished
      ? figuresOf(nutrients, (nutrient) => shareByMass(whole(nutrient), finished, 100_000))
      : null,
    finishedMg: finished?.interval ?? null,
    portions: dish.recipe.portions.map((portion) => ({
      portionId: portion.id,
      name: portion.name,
      figures: figuresOf(nutrients, (nutrient) => {
        return portionShare(dish, portion, finished).share(whole(nutrient));
      }),
    })),
    eaten: figuresOf(nutrients, (nutrient) => eatenShare(dish, finished).share(whole(nutrient))),
    lines: dish.recipe.lines.map((line) => {
      const eaten = eatenAmount(line, dish.recipe.weighings, context);
      const version = eaten.food?.version;
      const mass = eaten.known ? eaten.amount.massMg : null;
      return {
        lineId: line.id,
        text: line.text,
        foodId: line.foodId,
        foodName: eaten.food?.name ?? null,
        source: version
          ? [version.source, version.release, version.sourceNo].filter(Boolean).join(' ')
          : null,
        eatenMg: mass && eaten.known ? boundsOf(mass, eaten.amount.sources) : null,
        gap: eaten.known ? null : eaten.gap,
        figures: figuresOf(nutrients, (nutrient) =>
          ingredientParts(line, dish.recipe, context, nutrient, region),
        ),
      };
    }),
  };
}
