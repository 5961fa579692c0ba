import 'server-only';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import {
  keepNamedPhoto,
  namesPhoto,
  readNamedPhoto,
  type NamedPhoto,
} from '#lib/store/named-photos';

/** Photos of a scale's display, which entries of a filming day name; see `named-photos.ts`. */

/** Whether an entry of a day names a photo. */
async function isNamed(dayId: string, sha256: string, creatorId: string): Promise<boolean> {
  const rows = await database().dayEvent.findMany({
    where: { ...ALIVE, creatorId, dayId, kind: 'display' },
    select: { payload: true },
  });
  return rows.some(({ payload }) => namesPhoto(payload, 'sha256', sha256));
}

/**
 * Keeps the bytes of a photo that an entry of the day names. Sent again they stand once.
 * @returns a problem where they are no photo, where their hash is another, or where no entry names them
 */
export async function keepDisplayPhoto(
  dayId: string,
  sha256: string,
  bytes: Uint8Array,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Result<string>> {
  return keepNamedPhoto(await isNamed(dayId, sha256, creatorId), sha256, bytes);
}

/** A photo that an entry of the day names; null where none does, or its bytes have not come yet. */
export async function readDisplayPhoto(
  dayId: string,
  sha256: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<NamedPhoto | null> {
  return readNamedPhoto(await isNamed(dayId, sha256, creatorId), sha256);
}
