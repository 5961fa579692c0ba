import { openDB, type DBSchema } from 'idb';

/** The sound of an edit, as this browser keeps it. It goes nowhere else. */
export interface KeptSound {
  readonly episodeId: string;
  readonly name: string;
  readonly blob: Blob;
}

interface Schema extends DBSchema {
  readonly sounds: { key: string; value: KeptSound };
}

const NAME = 'scale-and-slate-sounds';

const open = () =>
  openDB<Schema>(NAME, 1, {
    upgrade: (database) => void database.createObjectStore('sounds', { keyPath: 'episodeId' }),
  });

/** The sound that is kept of an episode; null where none is, or the browser keeps nothing. */
export async function readSound(episodeId: string): Promise<KeptSound | null> {
  try {
    return (await (await open()).get('sounds', episodeId)) ?? null;
  } catch {
    return null;
  }
}

/** Keeps a sound; false where the browser will not, so that it lasts as long as the page. */
export async function keepSound(sound: KeptSound): Promise<boolean> {
  try {
    await (await open()).put('sounds', sound);
    return true;
  } catch {
    return false;
  }
}

export async function forgetSound(episodeId: string): Promise<void> {
  try {
    await (await open()).delete('sounds', episodeId);
  } catch {
    // Nothing was kept.
  }
}
