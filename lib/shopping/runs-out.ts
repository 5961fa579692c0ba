import { isInStock, needText } from '#lib/shopping/shopping-text';
import type { ShoppingItem, ShoppingList } from '#lib/shopping/list-types';
import { shelfAmount } from '#lib/shopping/shelf-amount';
import { printTo } from '#lib/units/print';
import { printDay } from '#lib/units/print-date';

/** A food of which planned days need more than counts at home. */
export interface RunsOut {
  readonly foodId: string;
  readonly name: string;
  /** The first day that needs it; null where an episode has none yet. */
  readonly date: string | null;
  readonly episodeId: string;
  readonly episode: string;
  /** What is short, and where that comes from: `'short of 394 g (need 794 g, in stock 400 g)'`. */
  readonly words: string;
}

/**
 * What runs out: the foods of a list that are not in stock, those first that are needed first.
 * @param list of all planned days
 * @example runsOut(list)[0].words // 'short of 394 g (need 794 g, in stock 400 g)'
 */
export function runsOut(list: ShoppingList): readonly RunsOut[] {
  const short = list.items.filter((item) => !isInStock(item));
  return short
    .flatMap((item): RunsOut[] => {
      const [first] = [...item.working].sort((a, b) => (day(a) < day(b) ? -1 : 1));
      if (!first) return [];
      const { foodId, name } = item;
      const { date, episodeId, episode } = first;
      return [{ foodId, name, date, episodeId, episode, words: shortWords(item, list) }];
    })
    .sort((a, b) => (day(a) === day(b) ? 0 : day(a) < day(b) ? -1 : 1));
}

/** Without a day last. */
const day = ({ date }: { readonly date: string | null }) => date ?? '9999';

function shortWords(item: ShoppingItem, { shelfUnits }: ShoppingList): string {
  const parts = [
    ...(item.buyMg === null || item.buyMg === 0 ? [] : [shelfAmount(item.buyMg, shelfUnits)]),
    ...(item.needMl === null ? [] : [`${printTo(item.needMl, 1)} ml`]),
  ];
  const why = needText(item, shelfUnits);
  if (parts.length === 0) return `amount open: ${item.open.join(', ')}`;
  return `short of ${parts.join(' + ')}${why === '' ? '' : ` (${why})`}`;
}

/** What runs out by food, in words with its day: `'Short of 394 g for Sat 12 Dec'`. */
export function shortByFood(all: readonly RunsOut[]): ReadonlyMap<string, string> {
  return new Map(
    all.map(({ foodId, words, date }) => {
      const [short = ''] = words.split(' (');
      const said = `${short.charAt(0).toUpperCase()}${short.slice(1)}`;
      return [foodId, date === null ? said : `${said} for ${printDay(date)}`];
    }),
  );
}

/** What runs out, by the episode that needs it first, in the order of the days. */
export function byFirstNeed(
  all: readonly RunsOut[],
): readonly { readonly of: RunsOut; readonly foods: readonly RunsOut[] }[] {
  const groups = new Map<string, RunsOut[]>();
  for (const each of all) {
    groups.set(each.episodeId, [...(groups.get(each.episodeId) ?? []), each]);
  }
  return [...groups.values()].flatMap((foods) => (foods[0] ? [{ of: foods[0], foods }] : []));
}
