import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { aboutTolerance } from '#lib/figures/judge-limit';
import type { MissingPart } from '#lib/figures/figure';
import { addParts, type Parts } from '#lib/figures/parts';
import { missingText } from '#lib/figures/print-figure';
import { cookingChange, ingredientParts, recipeParts } from '#lib/figures/recipe-parts';
import { eatenShare, portionShare } from '#lib/figures/shares';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { atAmount } from '#lib/swap/apply-swap';
import type { FitLimit } from '#lib/swap/fit-amounts';
import { quickBounds } from '#lib/units/quick-bounds';

/** Whether a target is met by the value, or by all that the value may be. */
export type Certainty = 'value' | 'range';

export interface LimitsWish {
  readonly dish: Dish;
  readonly targets: readonly Target[];
  /** The ingredients that may change, with the most that each may be. */
  readonly lines: readonly {
    readonly line: RecipeLine;
    readonly startMg: number;
    readonly highMg: number;
  }[];
  readonly certainty: Certainty;
}

/** A limit and the target that it is of. */
export interface TargetLimit {
  readonly targetId: string;
  readonly limit: FitLimit;
}

type End = 'low' | 'value' | 'high';

/**
 * Targets as limits on amounts: figures are sums over ingredients, each linear in its amount, and so are their hard
 * bounds; what an ingredient adds is taken from two of its amounts.
 */
export function fitLimits(file: EpisodeFile, wish: LimitsWish): Result<readonly TargetLimit[]> {
  const problems: Problem[] = [];
  const limits = wish.targets.flatMap((target): TargetLimit[] => {
    const made = limitsOf(file, target, wish);
    if (Array.isArray(made)) return made;
    problems.push({ path: `targets.${target.id}`, code: 'no-figure', message: made as string });
    return [];
  });
  const [first, ...others] = problems;
  return first ? failed(first, ...others) : ok(limits);
}

function limitsOf(file: EpisodeFile, target: Target, wish: LimitsWish): TargetLimit[] | string {
  const { nutrient, relation, amount } = target;
  const context = amountContext(file);
  const label = NUTRIENTS[nutrient].label;
  const take = takingOf(target, wish.dish, context);
  if (take === 'gone') return `The portion of the target for ${label} is gone.`;
  if (take === null) {
    return `The target for ${label} goes by grams of the finished dish, which weighs something else when amounts change: set it for the whole dish or one of so many equal portions.`;
  }
  const { region } = file.episode;
  const dishes = dishesOf(file.episode.segments);
  const of =
    target.segmentId === null ? dishes : dishes.filter(({ id }) => id === target.segmentId);
  if (of.length === 0) return `The dish of the target for ${label} is gone.`;
  const all = addParts(
    of.map((each) => {
      const share =
        target.segmentId === null && each.id !== wish.dish.id ? dayShare(each, context) : take;
      return share(recipeParts(each.recipe, each.title, context, nutrient, region));
    }),
  );
  const [noLow, noHigh] = [
    [...all.open, ...all.below],
    [...all.open, ...all.above],
  ];
  const tolerance = relation === 'about' ? aboutTolerance(nutrient, amount) : 0;
  const from = relation === 'atMost' ? null : amount - tolerance;
  const to = relation === 'atLeast' ? null : amount + tolerance;
  const lacking: readonly MissingPart[] = [
    ...(from === null ? [] : noLow),
    ...(to === null ? [] : noHigh),
  ];
  if (lacking.length > 0) {
    return `Nobody can say whether the target for ${label} is met: ${missingText(lacking)}.`;
  }
  const moved = wish.lines.map((each) =>
    lineMoves(each, { take, context, nutrient, region, wish }),
  );
  const touched = target.segmentId === null || target.segmentId === wish.dish.id;
  const base = quickBounds(all.terms, all.sources);
  const value = (end: End): FitLimit => ({
    base: base[end],
    per: moved.map((each) => (touched ? each.per[end] : 0)),
    anew: moved.map((each) => (touched ? each.anew[end] : 0)),
    from: null,
    to: null,
    size: Math.max(amount, 1),
  });
  const known = noLow.length + noHigh.length === 0;
  const by = wish.certainty === 'value' && known;
  const { id: targetId } = target;
  if (by) return [{ targetId, limit: { ...value('value'), from, to } }];
  return [
    ...(from === null ? [] : [{ targetId, limit: { ...value('low'), from } }]),
    ...(to === null ? [] : [{ targetId, limit: { ...value('high'), to } }]),
  ];
}

type Take = (parts: Parts) => Parts;

/**
 * The part of the changed dish that a target is about; null where it goes by grams of the finished dish, 'gone' where
 * the dish no longer has that portion.
 */
function takingOf(target: Target, dish: Dish, context: AmountContext): Take | 'gone' | null {
  if (target.segmentId === null) return dish.ate.kind === 'mass' ? null : dayShare(dish, context);
  if (target.portionId === null) return (parts) => parts;
  const own = dishesOfTarget(target, dish);
  const portion = own?.recipe.portions.find(({ id }) => id === target.portionId);
  if (!own || !portion) return 'gone';
  return portion.kind === 'mass' ? null : portionShare(own, portion, null).share;
}

function dishesOfTarget(target: Target, dish: Dish): Dish | null {
  return target.segmentId === dish.id ? dish : null;
}

function dayShare(dish: Dish, context: AmountContext): Take {
  return eatenShare(dish, finishedWeight(dish.recipe, context)).share;
}

interface Moving {
  readonly take: Take;
  readonly context: AmountContext;
  readonly nutrient: Nutrient;
  readonly region: EpisodeFile['episode']['region'];
  readonly wish: LimitsWish;
}

type Ends = Readonly<Record<End, number>>;

/** What one more milligram of an ingredient adds, and what it adds to be set anew at the amount that it has. */
function lineMoves(
  { line, startMg, highMg }: LimitsWish['lines'][number],
  moving: Moving,
): { readonly per: Ends; readonly anew: Ends } {
  const { recipe } = moving.wish.dish;
  // So many times the start, so that what is counted in pieces is still counted there.
  const most = Math.max(highMg, startMg + 1000);
  const far = startMg > 0 ? startMg * Math.max(2, Math.ceil(most / startMg)) : most;
  const kept = boundsIn(line, recipe, moving);
  const [near, top] = [startMg, far].map((mg) =>
    boundsIn(line, atAmount(recipe, line, mg, moving.context), moving),
  );
  if (!near || !top) throw new Error('an ingredient has two amounts');
  const ends = (of: (end: End) => number): Ends => ({
    low: of('low'),
    value: of('value'),
    high: of('high'),
  });
  const settledToZero = (each: number, size: number) =>
    Math.abs(each) <= 1e-9 * Math.max(1e-6, Math.abs(size)) ? 0 : each;
  return {
    per: ends((end) => (top[end] - near[end]) / (far - startMg)),
    anew: ends((end) => settledToZero(near[end] - kept[end], kept[end])),
  };
}

function boundsIn(
  line: RecipeLine,
  recipe: Recipe,
  { take, context, nutrient, region, wish }: Moving,
): Ends {
  const own = recipe.lines.find(({ id }) => id === line.id) ?? line;
  const parts = take(
    addParts([
      ingredientParts(own, recipe, context, nutrient, region),
      cookingChange(recipe, wish.dish.title, context, nutrient),
    ]),
  );
  return quickBounds(parts.terms, parts.sources);
}
