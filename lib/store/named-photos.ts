import 'server-only';
import { PHOTO_MIME } from '#lib/foods/photo-kinds';
import { readPhoto, type Photo } from '#lib/foods/photo';
import { failed, type Result } from '#lib/result';
import { keepPhoto, photoHash, readPhotoBytes } from '#lib/store/photos';

/**
 * Photos that an entry of a log names by their hash; the bytes follow by themselves, and only what an entry names is
 * kept and shown.
 */

/**
 * Keeps the bytes of a photo that an entry names. Sent again they stand once.
 * @returns a problem where they are no photo, where their hash is another, or where no entry names them
 */
export async function keepNamedPhoto(
  named: boolean,
  sha256: string,
  bytes: Uint8Array,
): Promise<Result<string>> {
  if (!named) {
    const message = 'No entry here names this photo.';
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

/** A photo with the media type that it is shown as. */
export type NamedPhoto = Photo & { readonly mime: string };

/** A photo that an entry names; null where none does, or its bytes have not come yet. */
export async function readNamedPhoto(named: boolean, sha256: string): Promise<NamedPhoto | null> {
  if (!named) return null;
  const bytes = await readPhotoBytes(sha256);
  const read = bytes && readPhoto(bytes);
  return read?.ok ? { ...read.value, mime: PHOTO_MIME[read.value.kind] } : null;
}

/** Whether a payload names a photo under a key. */
export function namesPhoto(payload: unknown, key: string, sha256: string): boolean {
  if (typeof payload !== 'object' || payload === null) return false;
  return (payload as Readonly<Record<string, unknown>>)[key] === sha256;
}
