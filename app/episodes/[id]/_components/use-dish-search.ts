'use client';

import { useEffect, useState } from 'react';
import type { DishHit } from '../dish-hit';

/** Long enough for a word to be finished, short enough to feel at once. */
const PAUSE_MS = 120;

/** The dishes whose words fit, as they are typed; those given below two letters. */
export function useDishSearch(
  episodeId: string,
  words: string,
  latest: readonly DishHit[],
): readonly DishHit[] {
  const [found, setFound] = useState<readonly DishHit[] | null>(null);
  useEffect(() => {
    if (words.length < 2) return;
    const abort = new AbortController();
    const timer = setTimeout(() => {
      void search(episodeId, words, abort.signal).then((hits) => hits && setFound(hits));
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      abort.abort();
    };
  }, [episodeId, words]);
  return words.length < 2 ? latest : (found ?? latest);
}

async function search(
  episodeId: string,
  words: string,
  signal: AbortSignal,
): Promise<readonly DishHit[] | null> {
  try {
    const url = `/episodes/${episodeId}/dishes?q=${encodeURIComponent(words)}`;
    const response = await fetch(url, { signal });
    return response.ok ? ((await response.json()) as readonly DishHit[]) : null;
  } catch {
    return null;
  }
}
