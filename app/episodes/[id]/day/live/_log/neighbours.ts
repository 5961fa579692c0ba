import type { DayEvent } from '#lib/shoot/day-log';
import type { Neighbours } from './day-sync';

/** The other tabs of this browser, where it lets them talk. */
export function tabNeighbours(dayId: string): Neighbours {
  const channel =
    typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`slate-day ${dayId}`);
  return {
    tell: (arrived) => channel?.postMessage(arrived),
    hear(listener) {
      channel?.addEventListener('message', ({ data }: MessageEvent<readonly DayEvent[]>) => {
        listener(data);
      });
    },
    close: () => channel?.close(),
  };
}
