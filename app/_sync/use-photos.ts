import { useCallback, useEffect, useRef, useState } from 'react';
import type { KeptPhoto } from './photo-bytes';
import { openPhotoStore, type PhotoStore } from './photo-store';

const PATIENCE_MS = 30_000;

let opened: Promise<PhotoStore> | null = null;
const store = () => (opened ??= openPhotoStore());

export interface Photos {
  /** Keeps a photo on the device; it is sent once the program has the entry that names it. */
  readonly add: (photo: KeptPhoto) => Promise<void>;
  /** Where a photo can be seen: on the device while it waits, else from the program. */
  readonly srcOf: (sha256: string) => string;
  /** Photos that wait on this device. */
  readonly waiting: number;
}

/**
 * Photos on this device that entries of a log name, sent one after the other.
 * @param query names the log to the address, as in `day=…`
 * @param named hashes that entries which have arrived name
 * @param connected tries again once this turns true
 */
export function usePhotos(
  address: string,
  query: string,
  named: readonly string[],
  connected: boolean,
): Photos {
  const [here, setHere] = useState<ReadonlyMap<string, string>>(new Map());
  const sending = useRef(false);
  const reread = useCallback(async () => {
    const photos = await (await store()).all();
    setHere((before) => {
      const next = new Map(
        photos.map(({ sha256, bytes }) => [
          sha256,
          before.get(sha256) ?? URL.createObjectURL(new Blob([bytes])),
        ]),
      );
      for (const [sha256, url] of before) if (!next.has(sha256)) URL.revokeObjectURL(url);
      return next;
    });
  }, []);
  const key = named.join(' ');
  useEffect(() => {
    const send = async () => {
      if (sending.current) return;
      sending.current = true;
      try {
        const kept = await store();
        const open = new Set(key.split(' '));
        for (const { sha256, bytes } of await kept.all()) {
          if (!open.has(sha256)) continue;
          const response = await fetch(`${address}/${sha256}?${query}`, {
            method: 'PUT',
            headers: { 'content-type': 'application/octet-stream' },
            body: bytes,
            signal: AbortSignal.timeout(PATIENCE_MS),
          });
          if (response.ok) await kept.remove(sha256);
        }
      } catch {
        // It stays here, and goes with the next sign of life.
      } finally {
        sending.current = false;
        await reread();
      }
    };
    void Promise.resolve().then(connected ? send : reread);
  }, [address, query, key, connected, reread]);
  return {
    waiting: here.size,
    srcOf: (sha256) => here.get(sha256) ?? `${address}/${sha256}?${query}`,
    async add(photo) {
      await (await store()).add(photo);
      await reread();
    },
  };
}
