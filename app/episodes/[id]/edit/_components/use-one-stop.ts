'use client';

import { useRef, useState, type FocusEvent, type KeyboardEvent, type RefObject } from 'react';

/** Where each key leads from a place among so many; null for all other keys. */
function placeAfter(key: string, at: number, count: number): number | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return at + 1 < count ? at + 1 : at;
    case 'ArrowLeft':
    case 'ArrowUp':
      return at > 0 ? at - 1 : at;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}

export interface OneStop<E extends HTMLElement> {
  readonly region: RefObject<E | null>;
  /** 0 for the one that Tab stops at, -1 for the others. */
  readonly tabIndexOf: (id: string) => 0 | -1;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onFocus: (event: FocusEvent) => void;
  readonly onBlur: (event: FocusEvent) => void;
}

/**
 * Many small things that are one stop of Tab: arrow keys, Home and End lead along those that are shown, which say by
 * `data-stop` which they are.
 * @param first the one that Tab stops at as long as none has the focus; it must be shown at each width
 */
export function useOneStop<E extends HTMLElement>(first: string | null): OneStop<E> {
  const region = useRef<E>(null);
  const [at, setAt] = useState<string | null>(null);
  const stop = at ?? first;
  return {
    region,
    tabIndexOf: (id) => (id === stop ? 0 : -1),
    onKeyDown: (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
      const all = [...(region.current?.querySelectorAll<HTMLElement>('[data-stop]') ?? [])];
      const shown = all.filter((element) => element.offsetParent !== null);
      const here = shown.findIndex((element) => element === document.activeElement);
      const next = here < 0 ? null : placeAfter(event.key, here, shown.length);
      if (next === null) return;
      event.preventDefault();
      shown[next]?.focus();
    },
    onFocus: ({ target }) => {
      if (target instanceof HTMLElement) setAt(target.dataset['stop'] ?? null);
    },
    onBlur: ({ relatedTarget }) => {
      if (relatedTarget instanceof Node && region.current?.contains(relatedTarget)) return;
      setAt(null);
    },
  };
}
