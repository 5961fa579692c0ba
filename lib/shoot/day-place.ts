import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { defaultDay, type DefaultDay } from '#lib/shoot/default-day';
import { daysBefore } from '#lib/shoot/evening';

/** A segment on a filming day: which, and what of it is done there. */
export interface DayPlace extends Pick<
  FilmingDay['segments'][number],
  'segmentId' | 'part' | 'pickup'
> {
  readonly title: string;
}

/** How a segment is put on a day; a pickup is its shots once more. */
export const PLACE_WAYS = ['all', 'cook', 'film', 'pickup'] as const;
export type PlaceWay = (typeof PLACE_WAYS)[number];

/** How a segment is on a day, on screen. */
export const PLACE_WAY_WORDS: Readonly<Record<PlaceWay, string>> = {
  all: 'all of it',
  cook: 'its cooking',
  film: 'its shots, cooked before',
  pickup: 'a pickup: shots once more',
};

/** The columns of a place. `placeColumns('pickup')` → `{ part: 'film', pickup: true }` */
export function placeColumns(way: PlaceWay): Pick<DayPlace, 'part' | 'pickup'> {
  return way === 'pickup' ? { part: 'film', pickup: true } : { part: way, pickup: false };
}

/** What of a segment a day has, with its title: `'cooking of Oat tray'`, `'Oat tray'`, `'pickup of Oat tray'`. */
export function placeInWords({ title, part, pickup }: Omit<DayPlace, 'segmentId'>): string {
  if (pickup) return `pickup of ${title}`;
  return part === 'all' ? title : `${part === 'cook' ? 'cooking' : 'shots'} of ${title}`;
}

/**
 * A further filming day of an episode: the day after its last, or today if that is later, with the segments that are
 * on no day yet; everything else as on the day before it, so that a pickup matches.
 * @param days its filming days by date
 * @param today local date, `YYYY-MM-DD`
 */
export function anotherDay(
  file: Pick<EpisodeFile, 'episode' | 'day'>,
  days: readonly { readonly date: string; readonly places: readonly DayPlace[] }[],
  today: string,
): DefaultDay {
  const last = days.at(-1)?.date;
  const next = last === undefined ? today : daysBefore(last, -1);
  const date = next < today ? today : next;
  const filmed = new Set(days.flatMap(({ places }) => places.map(({ segmentId }) => segmentId)));
  const first = defaultDay(file, date);
  const { day } = file;
  const like = day && {
    kind: day.kind,
    startMin: day.startMin,
    mealGapMin: day.mealGapMin,
    lightMarginMin: day.lightMarginMin,
    outfit: day.outfit,
  };
  return {
    ...first,
    ...like,
    date,
    segmentIds: first.segmentIds.filter((id) => !filmed.has(id)),
  };
}

/**
 * The order of a day once segments have come to it: each after the one that it follows in its own running order, or
 * before its episode's others if it follows none of them; where its episode has nothing on the day yet, last.
 *
 * @param onDay the day's segments as they stand
 * @param running the running order of the episode that they are of
 * @example inOrderOfDay(['a1', 'b1'], ['a1', 'a2'], ['a2']) // ['a1', 'a2', 'b1']
 */
export function inOrderOfDay(
  onDay: readonly string[],
  running: readonly string[],
  added: readonly string[],
): readonly string[] {
  const order = [...onDay];
  for (const id of running.filter((each) => added.includes(each))) {
    const at = running.indexOf(id);
    const before = running.slice(0, at).findLast((each) => order.includes(each));
    const after = running.slice(at + 1).find((each) => order.includes(each));
    if (before !== undefined) order.splice(order.indexOf(before) + 1, 0, id);
    else if (after !== undefined) order.splice(order.indexOf(after), 0, id);
    else order.push(id);
  }
  return order;
}
