'use client';

import { useEffect, useState } from 'react';
import type { FoodHit } from './hit';

/** Long enough for a word to be finished, short enough to feel at once. */
const PAUSE_MS = 120;

/** The foods that fit what is typed, best first, as it is typed; none below two letters. */
export function useFoodSearch(query: string): readonly FoodHit[] {
  const [hits, setHits] = useState<readonly FoodHit[]>([]);
  useEffect(() => {
    if (query.length < 2) return;
    const abort = new AbortController();
    const timer = setTimeout(() => {
      void search(query, abort.signal).then((found) => found && setHits(found));
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      abort.abort();
    };
  }, [query]);
  return hits;
}

async function search(words: string, signal: AbortSignal): Promise<readonly FoodHit[] | null> {
  try {
    const response = await fetch(`/foods/search?q=${encodeURIComponent(words)}`, { signal });
    return response.ok ? ((await response.json()) as readonly FoodHit[]) : null;
  } catch {
    return null;
  }
}
