import type { MadeEntry } from './entry';
import { memoryStore } from './memory-store';
import type { WaitingStore } from './waiting-store';

export interface OpenStore<E extends MadeEntry> extends WaitingStore<E> {
  /** Whether all that waits outlives this page. */
  lasts(): boolean;
}

/**
 * The browser's own database, and beside it memory for what it will not take: in a private window, on a
 * full disk, or after it broke. No press is lost for it, and `lasts` says so.
 */
export async function openStore<E extends MadeEntry>(
  openLasting: () => Promise<WaitingStore<E>>,
): Promise<OpenStore<E>> {
  const memory = memoryStore<E>();
  const lasting = await openLasting().catch(() => null);
  let lasts = lasting !== null;
  const inLasting = async (work: (store: WaitingStore<E>) => Promise<void>) => {
    if (lasting === null) return;
    await work(lasting).catch(() => {
      lasts = false;
    });
  };
  return {
    lasts: () => lasts,
    async add(destination, make) {
      if (lasting !== null) {
        try {
          return await lasting.add(destination, make);
        } catch {
          lasts = false;
        }
      }
      return memory.add(destination, make);
    },
    async all() {
      const held = await memory.all();
      const kept = (await lasting?.all().catch(() => null)) ?? null;
      lasts = kept !== null && held.length === 0;
      return [...(kept ?? []), ...held];
    },
    async remove(ids) {
      await inLasting((store) => store.remove(ids));
      await memory.remove(ids);
    },
    async refuse(id, why) {
      await inLasting((store) => store.refuse(id, why));
      await memory.refuse(id, why);
    },
    async renew(id) {
      await inLasting((store) => store.renew(id));
      await memory.renew(id);
    },
  };
}
