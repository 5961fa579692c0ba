import {
  amountContext,
  dishesOf,
  recipesOf,
  type AmountContext,
  type Dish,
} from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { MissingPart } from '#lib/figures/figure';
import type { Region } from '#lib/figures/line-parts';
import { addParts, NOTHING, scaleParts, type Parts } from '#lib/figures/parts';
import { recipeParts } from '#lib/figures/recipe-parts';
import { eatenShare, portionShare, type Share } from '#lib/figures/shares';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';
import { renamedApart } from '#lib/swap/renamed-apart';
import { quickBounds } from '#lib/units/quick-bounds';

/**
 * What a figure has more after a change than before it, in the nutrient's unit; less than 0 where it has less. `low` or
 * `high` null is unbounded to that side.
 */
export interface Difference {
  readonly nutrient: Nutrient;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly likelyLow: number | null;
  readonly likelyHigh: number | null;
  /** What is missing on either side and is not the same on both. */
  readonly missing: readonly MissingPart[];
}

export type Differences = Partial<Readonly<Record<Nutrient, Difference>>>;

/** The differences of a dish, of its portions and of the day. */
export interface DishDifferences {
  readonly whole: Differences;
  readonly portions: readonly {
    readonly portionId: string;
    readonly name: string;
    readonly differences: Differences;
  }[];
  readonly day: Differences;
}

/**
 * What a change of an episode does to a dish, its portions and the day. Errors that both sides share cancel first, and
 * so do missing amounts and values of ingredients that are the same on both sides (MODEL B.4): the salt that nobody
 * weighed leaves the difference as sure as it was.
 *
 * Law: the value is the figure after less the figure before; the bounds lie within those of the two figures subtracted.
 * @example fileDifferences(file, withFullFat, 'soup').portions[0].differences.protein // { value: 0.4, low: …, … }
 */
export function fileDifferences(
  before: EpisodeFile,
  after: EpisodeFile,
  segmentId: string,
  nutrients: readonly Nutrient[] = countedNutrients(before.episode),
): DishDifferences {
  const [was, becomes] = [sideOf(before), sideOf(after)];
  const of = (share: ShareOf, only: string | null) =>
    differencesOf(was, becomes, { share, only, nutrients });
  const dish = was.dishes.find(({ id }) => id === segmentId);
  return {
    whole: of(() => WHOLE, segmentId),
    portions: (dish?.recipe.portions ?? []).map((portion) => ({
      portionId: portion.id,
      name: portion.name,
      differences: of(
        (side, each) => portionShare(each, portion, finishedWeight(each.recipe, side.context)),
        segmentId,
      ),
    })),
    day: of(eaten, null),
  };
}

/**
 * What a change of an episode does to what is eaten of all its dishes, as `fileDifferences` has it of the day.
 * @example dayDifferences(file, withAllFullFat, ['protein']).protein // { value: 1.2, low: …, high: …, … }
 */
export function dayDifferences(
  before: EpisodeFile,
  after: EpisodeFile,
  nutrients: readonly Nutrient[] = countedNutrients(before.episode),
): Differences {
  return differencesOf(sideOf(before), sideOf(after), { share: eaten, only: null, nutrients });
}

function differencesOf(
  was: Side,
  becomes: Side,
  { share, only, nutrients }: Omit<Taking, 'nutrient'> & { nutrients: readonly Nutrient[] },
): Differences {
  return Object.fromEntries(
    nutrients.map((nutrient) => [
      nutrient,
      differenceOf(nutrient, addParts(apart(was, becomes, { share, only, nutrient }))),
    ]),
  );
}

const eaten: ShareOf = (side, dish) => eatenShare(dish, finishedWeight(dish.recipe, side.context));

const WHOLE: Share = { share: (parts) => parts, own: [] };

interface Side {
  readonly file: EpisodeFile;
  readonly context: AmountContext;
  readonly dishes: readonly Dish[];
  readonly region: Region;
}

function sideOf(file: EpisodeFile): Side {
  const { segments, region } = file.episode;
  return { file, context: amountContext(file), dishes: dishesOf(segments), region };
}

type ShareOf = (side: Side, dish: Dish) => Share;

interface Taking {
  readonly share: ShareOf;
  /** Of this dish alone; null for all. */
  readonly only: string | null;
  readonly nutrient: Nutrient;
}

/** The parts of each dish after, less those before, with what is the same on both sides taken out. */
function apart(was: Side, becomes: Side, { share, only, nutrient }: Taking): Parts[] {
  const same = sameLines(was, becomes);
  const ids = [...new Set([...was.dishes, ...becomes.dishes].map(({ id }) => id))];
  return ids
    .filter((id) => only === null || id === only)
    .flatMap((id) => {
      const [old, fresh] = [was, becomes].map((side) => partOf(side, id, { share, nutrient }));
      if (!old || !fresh) return [];
      const alike = sameShare(old.share, fresh.share);
      const [a, b] = alike ? withoutShared(fresh.whole, old.whole, same) : [fresh.whole, old.whole];
      const less = scaleParts(old.share.share(b), -1);
      const more = fresh.share.share(a);
      return [addParts([less, renamedApart(more, less.sources)])];
    });
}

interface DishPart {
  readonly whole: Parts;
  readonly share: Share;
}

function partOf(
  side: Side,
  id: string,
  { share, nutrient }: Pick<Taking, 'share' | 'nutrient'>,
): DishPart | null {
  const dish = side.dishes.find((each) => each.id === id);
  if (!dish) return { whole: NOTHING, share: WHOLE };
  const whole = recipeParts(dish.recipe, dish.title, side.context, nutrient, side.region);
  return { whole, share: share(side, dish) };
}

const ONE: Parts = { ...NOTHING, terms: [{ coefficient: 1, up: [], down: [] }] };

/** Whether two shares take the same of a dish, with the same error. */
function sameShare(a: Share, b: Share): boolean {
  const [one, other] = [a.share(ONE), b.share(ONE)];
  const plain = ({ terms, open, sources }: Parts) =>
    JSON.stringify([terms, open.length, [...sources].sort(([x], [y]) => (x < y ? -1 : 1))]);
  return one.open.length === 0 && plain(one) === plain(other);
}

/** Ids of the ingredients that are the same on both sides, of the same food, with the same readings. */
function sameLines(was: Side, becomes: Side): ReadonlySet<string> {
  const told = (side: Side) =>
    new Map(
      recipesOf(side.file).flatMap((recipe) =>
        recipe.lines.map((line) => [line.id, toldOf(line, recipe, side.context)] as const),
      ),
    );
  const other = told(becomes);
  return new Set([...told(was)].flatMap(([id, text]) => (other.get(id) === text ? [id] : [])));
}

function toldOf(line: RecipeLine, { weighings }: Recipe, { foods }: AmountContext): string {
  const own = weighings.filter(({ shares }) => shares.some(({ lineId }) => lineId === line.id));
  const of = [line.foodId, line.orFoodId].map((id) => foods.get(id ?? '')?.version.id ?? null);
  return JSON.stringify([{ ...line, text: '', note: '', shopNote: '' }, of, own]);
}

/** Two sides without what both miss of the same ingredients. */
function withoutShared(a: Parts, b: Parts, same: ReadonlySet<string>): [Parts, Parts] {
  const [openA, openB] = without(a.open, b.open, same);
  const [aboveA, aboveB] = without(a.above, b.above, same);
  const [belowA, belowB] = without(a.below, b.below, same);
  return [
    { ...a, open: openA, above: aboveA, below: belowA },
    { ...b, open: openB, above: aboveB, below: belowB },
  ];
}

type Missing = readonly MissingPart[];

function without(a: Missing, b: Missing, same: ReadonlySet<string>): [Missing, Missing] {
  const key = ({ lineId, reason }: MissingPart) => `${lineId} ${reason}`;
  const left = b.filter(({ lineId }) => same.has(lineId)).map(key);
  const gone: string[] = [];
  const restA = a.filter((part) => {
    const at = left.indexOf(key(part));
    if (at < 0) return true;
    gone.push(...left.splice(at, 1));
    return false;
  });
  const restB = b.filter((part) => {
    const at = gone.indexOf(key(part));
    if (at >= 0) gone.splice(at, 1);
    return at < 0;
  });
  return [restA, restB];
}

/** The bounds of a difference, which may lie below 0. */
function differenceOf(nutrient: Nutrient, parts: Parts): Difference {
  const { value, low, high, likelyLow, likelyHigh } = quickBounds(parts.terms, parts.sources);
  const noLow = parts.open.length > 0 || parts.below.length > 0;
  const noHigh = parts.open.length > 0 || parts.above.length > 0;
  return {
    nutrient,
    value,
    low: noLow ? null : low,
    high: noHigh ? null : high,
    likelyLow: noLow ? null : likelyLow,
    likelyHigh: noHigh ? null : likelyHigh,
    missing: [...parts.open, ...parts.above, ...parts.below],
  };
}
