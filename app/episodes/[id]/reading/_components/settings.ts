import { useCallback, useSyncExternalStore } from 'react';
import { z } from 'zod';
import { READING_RATE, READING_SIZES } from '#lib/cut/reading-pace';

const shape = z.object({
  /** Place among the sizes of letters. */
  size: z
    .int()
    .min(0)
    .max(READING_SIZES.length - 1)
    .catch(3),
  mirrored: z.boolean().catch(false),
  night: z.boolean().catch(false),
  /** Null: the creator's own rate. */
  perMinute: z.int().min(READING_RATE.min).max(READING_RATE.max).nullable().catch(null),
});

/** How this device shows the reading. */
export type ReadingSettings = z.output<typeof shape>;

const NAME = 'slate-reading';
const CHANGED = 'slate-reading-changed';
const UNSET = shape.parse({});

/** The choices of this device; kept where the browser keeps anything, for this page alone where not. */
export function useSettings(): [ReadingSettings, (patch: Partial<ReadingSettings>) => void] {
  const kept = useSyncExternalStore(subscribe, snapshot, () => '');
  const settings = settingsIn(kept);
  const choose = useCallback((patch: Partial<ReadingSettings>) => {
    memory = JSON.stringify({ ...settingsIn(snapshot()), ...patch });
    try {
      localStorage.setItem(NAME, memory);
    } catch {
      // A browser that keeps nothing asks again after a reload.
    }
    window.dispatchEvent(new Event(CHANGED));
  }, []);
  return [settings, choose];
}

let memory = '';

function snapshot(): string {
  try {
    return localStorage.getItem(NAME) ?? memory;
  } catch {
    return memory;
  }
}

function settingsIn(kept: string): ReadingSettings {
  try {
    return shape.catch(UNSET).parse(JSON.parse(kept));
  } catch {
    return UNSET;
  }
}

function subscribe(tell: () => void): () => void {
  window.addEventListener(CHANGED, tell);
  window.addEventListener('storage', tell);
  return () => {
    window.removeEventListener(CHANGED, tell);
    window.removeEventListener('storage', tell);
  };
}

const STILL = '(prefers-reduced-motion: reduce)';

/** Whether the person asks for less motion: then the page steps instead of gliding. */
export function useStepping(): boolean {
  return useSyncExternalStore(
    (tell) => {
      const media = window.matchMedia(STILL);
      media.addEventListener('change', tell);
      return () => media.removeEventListener('change', tell);
    },
    () => window.matchMedia(STILL).matches,
    () => true,
  );
}

/** Whether the browser lets a part of a page fill the screen (Fullscreen API, WHATWG): phones often do not. */
export function useCanFill(): boolean {
  return useSyncExternalStore(
    NEVER_CHANGES,
    () => document.fullscreenEnabled === true,
    () => false,
  );
}

const NEVER_CHANGES = () => () => undefined;
