import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { KeptPhoto } from './photo-bytes';

/** Photos between the press and the program's word that their bytes have come. */
export interface PhotoStore {
  add(photo: KeptPhoto): Promise<void>;
  all(): Promise<readonly KeptPhoto[]>;
  remove(sha256: string): Promise<void>;
}

interface Schema extends DBSchema {
  readonly photos: { key: string; value: KeptPhoto };
}

const NAME = 'scale-and-slate-photos';

/** The browser's own database; memory for what it will not take. */
export async function openPhotoStore(): Promise<PhotoStore> {
  const memory = new Map<string, KeptPhoto>();
  const lasting = await openDB<Schema>(NAME, 1, {
    upgrade: (database) => void database.createObjectStore('photos', { keyPath: 'sha256' }),
  }).catch((): IDBPDatabase<Schema> | null => null);
  return {
    async add(photo) {
      try {
        if (lasting === null) throw new Error('no store');
        await lasting.put('photos', photo);
      } catch {
        memory.set(photo.sha256, photo);
      }
    },
    async all() {
      const kept = (await lasting?.getAll('photos').catch(() => [])) ?? [];
      return [...kept, ...memory.values()];
    },
    async remove(sha256) {
      memory.delete(sha256);
      await lasting?.delete('photos', sha256).catch(() => undefined);
    },
  };
}
