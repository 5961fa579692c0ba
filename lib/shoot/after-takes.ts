import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import type { Segment } from '#lib/episode/schema';
import type { Shot } from '#lib/episode/step-schema';
import type { DayEvent } from '#lib/shoot/day-log';
import { foldDay, type DayFold } from '#lib/shoot/fold-day';
import { localClock } from '#lib/shoot/local-time';

/** A take that was entered, with all that is said of it. */
export interface LoggedTake {
  readonly id: string;
  /**
   * What stands on the slate: the segment's place in the running order and a letter for the shot, as `2B`. On a day
   * of several episodes the places count on from one to the next.
   */
  readonly slate: string;
  /** Which take of its shot, from 1. */
  readonly take: number;
  readonly shot: string;
  readonly framing: string;
  readonly segment: string;
  readonly good: boolean;
  /** When it ended, as `toISOString` writes it. */
  readonly at: string;
  /** The same by the kitchen's clock, to the second. */
  readonly clock: string;
  readonly note: string;
}

/** Letters of a slate; I and O are left out, since they read as numbers (common practice, no source). */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** The letters of the nth shot from 0: A to Z, then AA. `slateLetters(8)` → `'J'`; `slateLetters(24)` → `'AA'`. */
export function slateLetters(index: number): string {
  const last = LETTERS.charAt(index % LETTERS.length);
  return index < LETTERS.length
    ? last
    : `${slateLetters(Math.floor(index / LETTERS.length) - 1)}${last}`;
}

/**
 * The takes of a day in the order of their ends. A shot that is no longer in the episode keeps its takes, under the
 * slate `?`. A note goes with the last take before it at the same step.
 */
export function loggedTakes(file: DayFile, events: readonly DayEvent[]): LoggedTake[] {
  const fold = foldDay(events);
  const segments = slated(file);
  const notes = notesByTake(fold);
  const count = new Map<string, number>();
  return fold.takes.map(({ id, at, shotId, good }): LoggedTake => {
    const take = (count.get(shotId) ?? 0) + 1;
    count.set(shotId, take);
    const found = shotOf(segments, shotId);
    return {
      id,
      slate: found === null ? '?' : `${found.place + 1}${slateLetters(found.index)}`,
      take,
      shot: found?.shot.title ?? 'a shot that was taken out since',
      framing: found?.shot.framing ?? '',
      segment: found?.segment.title ?? '',
      good,
      at,
      clock: localClock(new Date(at), file.kitchen.zone),
      note: (notes.get(id) ?? []).join('; '),
    };
  });
}

/** The segments in the order that slates count them: the same on the pages of all episodes of the day. */
function slated(file: DayFile): readonly Segment[] {
  const { segments } = filmedTogether(file).episode;
  if (file.also === undefined) return segments;
  const place = new Map(file.day?.segments.map(({ segmentId }, at) => [segmentId, at]));
  const onDay = segments.filter(({ id }) => place.has(id));
  onDay.sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0));
  return [...onDay, ...segments.filter(({ id }) => !place.has(id))];
}

function shotOf(
  segments: readonly Segment[],
  shotId: string,
): { segment: Segment; shot: Shot; place: number; index: number } | null {
  for (const [place, segment] of segments.entries()) {
    const index = segment.shots.findIndex(({ id }) => id === shotId);
    const shot = segment.shots[index];
    if (shot) return { segment, shot, place, index };
  }
  return null;
}

function notesByTake({ takes, notes }: DayFold): Map<string, string[]> {
  const byTake = new Map<string, string[]>();
  for (const { rowKey, at, text } of notes) {
    if (rowKey === null) continue;
    const take = takes.findLast((one) => one.rowKey === rowKey && one.at <= at);
    if (take) byTake.set(take.id, [...(byTake.get(take.id) ?? []), text]);
  }
  return byTake;
}
