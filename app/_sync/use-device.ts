import { useSyncExternalStore } from 'react';

const never = () => () => undefined;

const MINUTE_MS = 60_000;
const LOOK_EVERY_MS = 5_000;

function everyFewSeconds(look: () => void): () => void {
  const timer = setInterval(look, LOOK_EVERY_MS);
  document.addEventListener('visibilitychange', look);
  return () => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', look);
  };
}

/** The instant at which the present minute of this device began; null until the page runs. */
export function useMinute(): Date | null {
  const minute = useSyncExternalStore(
    everyFewSeconds,
    () => Math.floor(Date.now() / MINUTE_MS),
    () => null,
  );
  return minute === null ? null : new Date(minute * MINUTE_MS);
}

function everySecond(look: () => void): () => void {
  const timer = setInterval(look, 1_000);
  document.addEventListener('visibilitychange', look);
  return () => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', look);
  };
}

/** The present second of this device, in milliseconds; null until the page runs, and where nobody needs it. */
export function useSecond(needed: boolean): number | null {
  return useSyncExternalStore(
    needed ? everySecond : never,
    () => (needed ? Math.floor(Date.now() / 1000) * 1000 : null),
    () => null,
  );
}

const HANDHELD = '(pointer: coarse), (max-width: 44rem)';

function whenTurned(look: () => void): () => void {
  const query = window.matchMedia(HANDHELD);
  query.addEventListener('change', look);
  return () => query.removeEventListener('change', look);
}

/** What a person calls the thing that shows this page. */
export function useDeviceWord(): 'phone' | 'computer' {
  return useSyncExternalStore(
    whenTurned,
    () => (window.matchMedia(HANDHELD).matches ? 'phone' : 'computer'),
    () => 'phone',
  );
}

/** Whether a worker stands behind this page, which can show it again without the server. */
export function useReloads(): boolean {
  return useSyncExternalStore(
    never,
    () => 'serviceWorker' in navigator && navigator.serviceWorker.controller !== null,
    () => false,
  );
}
