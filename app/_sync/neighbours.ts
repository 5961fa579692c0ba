import type { Neighbours } from './device-sync';
import type { MadeEntry } from './entry';

/**
 * The other tabs of this browser, where it lets them talk.
 * @param name of what they all show
 */
export function tabNeighbours<E extends MadeEntry>(name: string): Neighbours<E> {
  const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name);
  return {
    tell: (arrived) => channel?.postMessage(arrived),
    hear(listener) {
      channel?.addEventListener('message', ({ data }: MessageEvent<readonly E[]>) => {
        listener(data);
      });
    },
    close: () => channel?.close(),
  };
}
