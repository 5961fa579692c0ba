import { amountContext, type AmountContext } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { refuseText } from '#lib/foods/refuse-words';
import { boughtAmount } from '#lib/shopping/bought-amount';
import type { LaterUse, NeedRow, ShoppingList } from '#lib/shopping/list-types';
import { foodNeeds, type Need } from '#lib/shopping/needs';

/** What all episodes of a list need, by food, in viewing order. */
export interface ListNeeds {
  readonly foods: ReadonlyMap<string, Food>;
  readonly rows: ReadonlyMap<string, readonly NeedRow[]>;
  readonly unmatched: ShoppingList['unmatched'];
}

/**
 * The needs of several episodes together, each row with its episode and day. A food that stands in several files is
 * one: files of one store share their ids.
 */
export function listNeeds(files: readonly EpisodeFile[]): ListNeeds {
  const foods = new Map<string, Food>();
  const rows = new Map<string, NeedRow[]>();
  const unmatched: ShoppingList['unmatched'][number][] = [];
  for (const file of files) {
    const context = amountContext(file);
    for (const food of file.foods) if (!foods.has(food.id)) foods.set(food.id, food);
    const found = foodNeeds(file.episode.segments, context);
    unmatched.push(...found.unmatched);
    for (const need of found.needs) {
      const known = rows.get(need.food.id) ?? [];
      rows.set(need.food.id, [...known, needRow(file, need, context)]);
    }
  }
  return { foods, rows, unmatched };
}

function needRow(file: EpisodeFile, need: Need, context: AmountContext): NeedRow {
  const { dish, line, food, words, times, spareTakes, pickups } = need;
  const once = boughtAmount(line, food, context);
  const all = (amount: number | null | undefined) =>
    amount == null || times === null ? null : amount * times;
  return {
    episodeId: file.episode.id,
    episode: file.episode.title,
    date: file.day?.date ?? null,
    segmentId: dish.id,
    segment: dish.title,
    line: words,
    batches: times === null ? null : times - spareTakes - pickups,
    spareTakes,
    pickups,
    mg: all(once?.mg),
    ml: all(once?.ml),
    onTop: once?.isMore ? refuseText(food.version.refuse) : null,
    shopNote: line.shopNote,
  };
}

/** What episodes planned later need of a food, one row for each of their segments, the earliest day first. */
export function laterUses(later: ListNeeds, foodId: string): readonly LaterUse[] {
  const uses = new Map<string, LaterUse>();
  for (const row of later.rows.get(foodId) ?? []) {
    if (row.mg === null || row.mg <= 0) continue;
    const { episodeId, episode, segmentId, segment, date } = row;
    const mg = (uses.get(segmentId)?.mg ?? 0) + row.mg;
    uses.set(segmentId, { episodeId, episode, segmentId, segment, date, mg });
  }
  const dated = [...uses.values()];
  return dated.sort((a, b) => ((a.date ?? '9999') < (b.date ?? '9999') ? -1 : 1));
}
