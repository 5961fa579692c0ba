import type { Cost, DishFacts, EditFacts, LeastPublished } from '#lib/claims/edit-facts';
import { dishesOf, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { FOLLOW_LOCAL_CODE, sourceText } from '#lib/safety/caution';
import { insideTemperatureCaution } from '#lib/safety/general-cautions';
import { safeTemperature } from '#lib/safety/safe-temperatures';
import { isDoubtful, secondsByRow } from '#lib/shoot/after-steps';
import { rowKey, type DayEvent } from '#lib/shoot/day-log';
import { foldDay, type DayFold } from '#lib/shoot/fold-day';
import { mayGoInRaw } from '#lib/shoot/may-go-in-raw';
import type { DishCost } from '#lib/shopping/list-types';

type File = Pick<EpisodeFile, 'episode' | 'foods' | 'recipes'>;

/** What is known of the episode beside its file. */
export interface Known {
  /** What was entered on its filming days; empty where nothing was. */
  readonly events: readonly DayEvent[];
  /** What its dishes cost, as its shopping list says it; empty where no price is known. */
  readonly costs: readonly Pick<DishCost, 'segmentId' | 'cost'>[];
}

/**
 * What the day’s log, the prices and the published least inside temperatures say of an episode’s dishes, as plain data
 * that words can be held against. What is doubtful, not done or without a price is null or left out, never nought.
 * @example editFactsOf(file, { events, costs: shoppingList(file).dishes }).dishes[0]?.readyAfterS // 2520
 */
export function editFactsOf(file: File, { events, costs }: Known): EditFacts {
  const fold = foldDay(events);
  const seconds = secondsByRow(events);
  const costOf = new Map(costs.map(({ segmentId, cost }) => [segmentId, wholeCost(cost)]));
  const all = dishesOf(file.episode.segments);
  const dishes = all.map((dish): DishFacts => {
    const keys = new Set(dish.steps.map(({ id }) => rowKey({ stepId: id })));
    return {
      segmentId: dish.id,
      readyAfterS: readyAfter(dish, fold),
      steps: dish.steps.flatMap(({ id, usualS }) => {
        const tookS = seconds.get(rowKey({ stepId: id }));
        return tookS === undefined || isDoubtful(tookS, usualS) ? [] : [{ stepId: id, tookS }];
      }),
      coreMilliC: fold.readings
        .filter((reading) => reading.rowKey !== null && keys.has(reading.rowKey))
        .map(({ milliC }) => milliC),
      cost: costOf.get(dish.id) ?? null,
      inside: leastPublished(dish, file),
    };
  });
  return { dishes, dayCost: dayCost(all, costOf) };
}

/** Steps that make the dish: the others are the filming’s and the meal’s. */
const MAKES: ReadonlySet<string> = new Set(['prep', 'cook', 'wait']);

/**
 * Seconds from the first hand on a dish to the end of the last step that makes it, on the day itself; null where a step
 * is not done, was made again, or nobody knows when the first began.
 */
function readyAfter({ steps }: Dish, fold: DayFold): number | null {
  const made = steps
    .filter(({ role, evening }) => !evening && MAKES.has(role))
    .map(({ id }) => rowKey({ stepId: id }))
    .filter((key) => !fold.skippedAt.has(key));
  const done = made.map((key) => fold.doneAt.get(key));
  if (made.length === 0 || done.includes(undefined)) return null;
  if (made.some((key) => fold.redone.has(key))) return null;
  const starts = made.flatMap((key) => fold.startedAt.get(key) ?? []).map((at) => Date.parse(at));
  const ends = done.flatMap((at) => (at === undefined ? [] : [Date.parse(at)]));
  const [from, to] = [Math.min(...starts), Math.max(...ends)];
  // What was done before anything was begun was begun without a press.
  if (!Number.isFinite(from) || Math.min(...ends) < from) return null;
  return Math.round((to - from) / 1000);
}

/** A cost in which no price is missing. */
function wholeCost({ low, minor, high, currency, atLeast }: DishCost['cost']): Cost | null {
  return atLeast ? null : { lowMinor: low, minor, highMinor: high, currency };
}

/**
 * What the food of the day costs, by the share of each dish that is eaten; null where one of them has no price, or one
 * in another currency, or nobody knows its share.
 */
function dayCost(dishes: readonly Dish[], costOf: ReadonlyMap<string, Cost | null>): Cost | null {
  const parts = dishes
    .filter(({ eaten }) => eaten.num > 0)
    .map(({ id, ate, eaten }) => {
      const cost = ate.kind === 'share' ? (costOf.get(id) ?? null) : null;
      return cost && { ...cost, share: eaten.num / eaten.den };
    });
  const known = parts.filter((part) => part !== null);
  const [first] = known;
  if (!first || known.length < parts.length) return null;
  if (known.some(({ currency }) => currency !== first.currency)) return null;
  const sum = (of: (cost: Cost) => number) =>
    known.reduce((total, part) => total + of(part) * part.share, 0);
  return {
    lowMinor: Math.floor(sum(({ lowMinor }) => lowMinor)),
    minor: Math.round(sum(({ minor }) => minor)),
    highMinor: Math.ceil(sum(({ highMinor }) => highMinor)),
    currency: first.currency,
  };
}

/** The rows of the published chart for what may go into a dish raw, the strictest first, each with its caution. */
function leastPublished(dish: Dish, file: File): LeastPublished[] {
  return mayGoInRaw(file, dish).map(({ foodClass, ingredients }) => {
    const row = safeTemperature(foodClass);
    const { text, source } = insideTemperatureCaution(row);
    const caution = `${text} (${sourceText(source)}) ${FOLLOW_LOCAL_CODE}`;
    const { milliC, fahrenheit } = row;
    return { ingredients, milliC, fahrenheit, caution };
  });
}
