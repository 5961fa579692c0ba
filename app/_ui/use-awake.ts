import { useEffect } from 'react';

/** Keeps the screen awake while `on`, where the browser can (Screen Wake Lock, W3C). */
export function useAwake(on: boolean): void {
  useEffect(() => {
    if (!on) return;
    let lock = awake();
    // The browser lets go whenever the page is hidden.
    const seen = () => {
      if (document.visibilityState === 'visible') lock = awake();
    };
    document.addEventListener('visibilitychange', seen);
    return () => {
      document.removeEventListener('visibilitychange', seen);
      void lock.then((held) => held?.release());
    };
  }, [on]);
}

async function awake(): Promise<WakeLockSentinel | null> {
  if (!('wakeLock' in navigator)) return null;
  return navigator.wakeLock.request('screen').catch(() => null);
}
