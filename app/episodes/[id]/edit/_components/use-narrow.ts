'use client';

import { useSyncExternalStore } from 'react';

/** Below the width at which transcript and statements stand beside each other. */
const NARROW = '(width < 64rem)';

function subscribe(changed: () => void): () => void {
  const media = window.matchMedia(NARROW);
  media.addEventListener('change', changed);
  return () => media.removeEventListener('change', changed);
}

/** Whether one thing stands below the other, as on a phone; false until the page knows its width. */
export function useNarrow(): boolean {
  return useSyncExternalStore(
    subscribe,
    () => window.matchMedia(NARROW).matches,
    () => false,
  );
}
