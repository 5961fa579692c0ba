import { useCallback, useEffect, useReducer, useRef } from 'react';
import { relayMessage, type RelayMessage } from './message';
import { standingAfter, type RelayEvent, type RelayStanding } from './standing';

/**
 * Hears what the devices of a reading tell each other, and tells them. Without the program it is 'away' and comes back
 * by itself: with the stream, with what is heard, or with the next that is told. What is told meanwhile is lost, since
 * it is of use at once or not at all.
 */
export function useRelay(
  episodeId: string,
  hear: (message: RelayMessage) => void,
): [RelayStanding, (message: RelayMessage) => void] {
  const [standing, happened] = useReducer(
    (now: RelayStanding, event: RelayEvent) => standingAfter(now, event),
    'looking',
  );
  const stream = useRef<EventSource | null>(null);
  const heard = useRef(hear);
  useEffect(() => {
    heard.current = hear;
  }, [hear]);
  const address = `/episodes/${encodeURIComponent(episodeId)}/reading/relay`;

  useEffect(() => {
    const source = new EventSource(address);
    stream.current = source;
    source.addEventListener('open', () => happened('opened'));
    // A stream that was refused is closed for good; any other is opened again by the browser.
    source.addEventListener('error', () =>
      happened(source.readyState === EventSource.CLOSED ? 'refused' : 'lost'),
    );
    source.addEventListener('full', () => {
      source.close();
      happened('full');
    });
    source.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      happened('heard');
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
      sent.then(
        ({ ok }) => {
          if (!ok) happened('refused');
          else if (stream.current?.readyState === EventSource.OPEN) happened('told');
        },
        () => happened('lost'),
      );
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
