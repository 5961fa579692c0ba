import { useCallback, useEffect, useRef, useState } from 'react';
import { relayMessage, type RelayMessage } from './message';

export type RelayStanding = 'looking' | 'here' | 'away' | 'full';

/**
 * Hears what the devices of a reading tell each other, and tells them. Without the program it is 'away' and comes back
 * by itself; what is told meanwhile is lost, since it is of use at once or not at all.
 */
export function useRelay(
  episodeId: string,
  hear: (message: RelayMessage) => void,
): [RelayStanding, (message: RelayMessage) => void] {
  const [standing, setStanding] = useState<RelayStanding>('looking');
  const heard = useRef(hear);
  useEffect(() => {
    heard.current = hear;
  }, [hear]);
  const address = `/episodes/${encodeURIComponent(episodeId)}/reading/relay`;

  useEffect(() => {
    const source = new EventSource(address);
    source.addEventListener('open', () => setStanding('here'));
    source.addEventListener('error', () => setStanding('away'));
    source.addEventListener('full', () => {
      source.close();
      setStanding('full');
    });
    source.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      const message = relayMessage.safeParse(jsonOf(data));
      if (message.success) heard.current(message.data);
    });
    return () => source.close();
  }, [address]);

  const tell = useCallback(
    (message: RelayMessage) => {
      const sent = fetch(address, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(message),
      });
      void sent.catch(() => setStanding('away'));
    },
    [address],
  );
  return [standing, tell];
}

function jsonOf(text: unknown): unknown {
  try {
    return JSON.parse(String(text));
  } catch {
    return null;
  }
}
