import type { Nutrient } from '#lib/foods/nutrients';
import { dishesOf, type Dish } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { AmountGap, EatenAmount } from '#lib/episode/eaten-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { compiled } from '#lib/figures/compiled/reckoning';
import type { Figure } from '#lib/figures/figure';
import type { Region } from '#lib/figures/line-parts';
import { lazily } from '#lib/figures/lazily';
import { figureOf, NOTHING, type Parts } from '#lib/figures/parts';
import type { DishReckoning, Reckoning, WorkedDish } from '#lib/figures/reckoning';
import { eatenShare, massShare, portionShare } from '#lib/figures/shares';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import type { Bounds } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';
import { quickBounds } from '#lib/units/quick-bounds';

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
 * Every figure of an episode with its breakdown: per ingredient, dish, portion and day. Each set of figures is worked
 * out when it is first read.
 *
 * @param file the plain data of the episode with its foods and kitchen
 * @param nutrients which to compute; the region's panel and what targets and sentences ask for, unless given
 * @param reckoning how; both give the same figures
 * @example episodeFigures(file).dishes[0].whole.protein // { value: 71.3, low: 69.9, high: 72.7, … }
 */
export function episodeFigures(
  file: EpisodeFile,
  nutrients: readonly Nutrient[] = countedNutrients(file.episode),
  reckoning: (file: EpisodeFile, nutrients: readonly Nutrient[]) => Reckoning = compiled,
): EpisodeFigures {
  const { region, segments, anythingElse } = file.episode;
  const reckon = reckoning(file, nutrients);
  const dishes = dishesOf(segments).map((dish) => ({
    dish,
    ...reckon.dish(dish, (of) => workedDish(dish, of)),
  }));
  return lazily(
    {
      region,
      nutrients,
      dishes: dishes.map(({ figures }) => figures),
      dayIsWhole: anythingElse?.kind === 'nothing',
    },
    {
      day: () =>
        dishes.length === 0
          ? withoutDishes(file, nutrients)
          : reckon.together(dishes.map(({ dish, eaten }) => ({ dish, share: eaten }))),
    },
  );
}

/** A day without any dish is open, not nothing eaten. */
function withoutDishes({ episode }: EpisodeFile, nutrients: readonly Nutrient[]): Figures {
  const open = [{ lineId: episode.id, text: episode.title, reason: 'noLines' as const }];
  return Object.fromEntries(nutrients.map((each) => [each, figureOf(each, { ...NOTHING, open })]));
}

/** All of a dish. */
const all = (parts: Parts): Parts => parts;

function workedDish(dish: Dish, of: DishReckoning): WorkedDish {
  const finished = finishedWeight(dish.recipe, of.context);
  const share = eatenShare(dish, finished).share;
  const figures: DishFigures = lazily(
    {
      segmentId: dish.id,
      title: dish.title,
      finishedMg: finished?.interval ?? null,
      portions: dish.recipe.portions.map((portion) =>
        lazily(
          { portionId: portion.id, name: portion.name },
          { figures: () => of.part(portionShare(dish, portion, finished).share) },
        ),
      ),
    },
    {
      whole: () => of.part(all),
      per100g: () => finished && of.part(massShare(dish, finished, 100_000).share),
      eaten: () => of.part(share),
      lines: () => of.lines(lineRow),
    },
  );
  return { figures, eaten: share };
}

function lineRow(line: RecipeLine, eaten: EatenAmount, figures: () => Figures): LineFigures {
  const version = eaten.food?.version;
  const mass = eaten.known ? eaten.amount.massMg : null;
  return lazily(
    {
      lineId: line.id,
      text: line.text,
      foodId: line.foodId,
      foodName: eaten.food?.name ?? null,
      source: version
        ? [version.source, version.release, version.sourceNo].filter(Boolean).join(' ')
        : null,
      eatenMg: mass && eaten.known ? quickBounds(mass, eaten.amount.sources) : null,
      gap: eaten.known ? null : eaten.gap,
    },
    { figures },
  );
}
