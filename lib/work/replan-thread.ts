import { parentPort } from 'node:worker_threads';
import type { EpisodeFile } from '#lib/episode/schema';
import type { DayEvent } from '#lib/shoot/day-log';
import { foldDay } from '#lib/shoot/fold-day';
import { minuteOf } from '#lib/shoot/local-time';
import { placedPickups } from '#lib/shoot/placed-pickups';
import type { PlanEntry } from '#lib/shoot/plan';
import { promisedOrder } from '#lib/shoot/replan-order';
import { replanWithPickups } from '#lib/shoot/replan-pickups';
import { replanNews, type ReplanNews } from '#lib/shoot/replan-words';

/** A day to be planned anew from an instant on, in a thread of its own. */
export interface ReplanTask {
  readonly file: EpisodeFile;
  /** The entries of the day's own plan. */
  readonly planned: readonly PlanEntry[];
  readonly events: readonly DayEvent[];
  readonly nowMin: number;
}

if (parentPort !== null) {
  const port = parentPort;
  const say = (news: ReplanNews): void => port.postMessage(news);
  port.on('message', ({ file, planned, events, nowMin }: ReplanTask) => {
    const fold = foldDay(events);
    const promised = promisedOrder([...planned, ...placedPickups(fold)], fold.order);
    const date = file.day?.date ?? '';
    const clock = {
      nowMin,
      minuteOf: (at: string) => minuteOf(new Date(at), date, file.kitchen.zone),
    };
    const { replan, notPlaced } = replanWithPickups(file, promised, fold, clock);
    say(replanNews(replan, promised, nowMin, notPlaced));
  });
}
