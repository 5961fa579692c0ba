'use client';

import { useEffect, useState } from 'react';
import type { TranscriptText } from './view';

type Read =
  | { readonly kind: 'reading' }
  | { readonly kind: 'failed' }
  | { readonly kind: 'read'; readonly texts: readonly TranscriptText[] };

/** The lines of the texts, asked for when the page opens and again whenever a text has changed. */
export function useTranscript(episodeId: string, version: string): Read {
  const [read, setRead] = useState<Read>({ kind: 'reading' });
  useEffect(() => {
    const stop = new AbortController();
    const ask = async (): Promise<Read> => {
      const answer = await fetch(`/episodes/${episodeId}/edit/lines.json`, { signal: stop.signal });
      if (!answer.ok) return { kind: 'failed' };
      return { kind: 'read', texts: (await answer.json()) as readonly TranscriptText[] };
    };
    ask()
      .catch((): Read => ({ kind: 'failed' }))
      .then((next) => {
        if (!stop.signal.aborted) setRead(next);
      })
      .catch(() => undefined);
    return () => stop.abort();
  }, [episodeId, version]);
  return read;
}
