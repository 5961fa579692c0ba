import 'server-only';
import { PHOTO_MIME } from '#lib/foods/photo-kinds';
import { readPhoto, type Photo } from '#lib/foods/photo';
import { failed, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import { keepPhoto, photoHash, readPhotoBytes } from '#lib/store/photos';

/**
 * Photos of a scale's display. An entry of the day names one by its hash; the bytes follow by themselves, and only
 * what an entry names is kept.
 */

/** Whether an entry of a day names a photo. */
async function isNamed(dayId: string, sha256: string, creatorId: string): Promise<boolean> {
  const rows = await database().dayEvent.findMany({
    where: { ...ALIVE, creatorId, dayId, kind: 'display' },
    select: { payload: true },
  });
  return rows.some(
    ({ payload }) =>
      typeof payload === 'object' &&
      payload !== null &&
      'sha256' in payload &&
      payload.sha256 === sha256,
  );
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
  if (!(await isNamed(dayId, sha256, creatorId))) {
    const message = 'No entry of this day names this photo.';
    return failed({ path: 'sha256', code: 'not-named', message });
  }
  const photo = readPhoto(bytes);
  if (!photo.ok) return photo;
  if (photoHash(photo.value.bytes) !== sha256) {
    const message = 'This is another photo than the entry names, or a part of it.';
    return failed({ path: 'photo', code: 'another', message });
  }
  return keepPhoto(photo.value.bytes);
}

/** A photo that an entry of the day names; null where none does, or its bytes have not come yet. */
export async function readDisplayPhoto(
  dayId: string,
  sha256: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<{ readonly bytes: Photo['bytes']; readonly mime: string } | null> {
  if (!(await isNamed(dayId, sha256, creatorId))) return null;
  const bytes = await readPhotoBytes(sha256);
  const read = bytes && readPhoto(bytes);
  return read?.ok ? { bytes: read.value.bytes, mime: PHOTO_MIME[read.value.kind] } : null;
}
