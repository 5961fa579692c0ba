import { useEffect, useState } from 'react';
import type { EpisodeFile } from '#lib/episode/schema';
import type { ShelfLabel } from '#lib/foods/shelf-label';
import type { TakenInstead } from '#lib/overview/taken-instead';

/** What another label does to the dishes of the list, worked out on this device. */
export type WorkOut = (foodId: string, label: ShelfLabel) => readonly TakenInstead[];

/**
 * Fetches the dishes and what reckons with them as soon as the page stands, so that both are there in a shop without
 * signal; null until they are.
 * @param connected tries again once this turns true
 */
export function useWorkedOut(address: string, connected: boolean): WorkOut | null {
  const [workOut, setWorkOut] = useState<{ readonly of: WorkOut } | null>(null);
  const there = workOut !== null;
  useEffect(() => {
    if (there || !connected) return;
    let wanted = true;
    const load = async () => {
      const [{ takenInstead }, response] = await Promise.all([
        import('#lib/overview/taken-instead'),
        fetch(address),
      ]);
      const { files } = (await response.json()) as { readonly files: readonly EpisodeFile[] };
      if (wanted && response.ok) {
        setWorkOut({ of: (foodId, label) => takenInstead(files, foodId, label) });
      }
    };
    load().catch(() => undefined);
    return () => {
      wanted = false;
    };
  }, [address, there, connected]);
  return workOut?.of ?? null;
}
