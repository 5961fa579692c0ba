import { useCallback, useState } from 'react';

/** The alarms that were stopped on this device, also after a reload where the browser keeps that. */
export function useStopped(dayId: string): [ReadonlySet<string>, (alarm: string) => void] {
  const name = `slate-stopped-${dayId}`;
  const [stopped, setStopped] = useState<ReadonlySet<string>>(() => read(name));
  const stop = useCallback(
    (alarm: string) =>
      setStopped((before) => {
        const after = new Set([...before, alarm]);
        try {
          localStorage.setItem(name, JSON.stringify([...after]));
        } catch {
          // A browser that keeps nothing rings again after a reload.
        }
        return after;
      }),
    [name],
  );
  return [stopped, stop];
}

function read(name: string): ReadonlySet<string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(name) ?? '[]');
    return new Set(Array.isArray(kept) ? kept.map(String) : []);
  } catch {
    return new Set();
  }
}
