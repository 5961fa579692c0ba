import { fittedSize } from '#lib/foods/fitted-size';
import { readPhoto } from '#lib/foods/photo';
import { failed, ok, type Result } from '#lib/result';

/** A photo as it is kept: its bytes, and their hash by which an entry names it. */
export interface KeptPhoto {
  readonly sha256: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The longest side of a photo, in pixels: its digits can be read, and it is small enough to send. */
const LONGEST = 1600;
const QUALITY = 0.82;

const no = (message: string) => failed({ path: 'photo', code: 'no-photo', message });

/**
 * A photo made small, without the place and time that a camera writes into it. Its hash is the one that
 * the program will find, since both read photos by the same rule.
 */
export async function photoOf(file: Blob): Promise<Result<KeptPhoto>> {
  // Only pages that the browser trusts may hash; on others a photo could not be named.
  const subtle = (globalThis.crypto as Crypto | undefined)?.subtle as SubtleCrypto | undefined;
  if (subtle === undefined) {
    return no('This browser keeps no photos on a page that it does not trust: type the number.');
  }
  const small = await smaller(file).catch(() => null);
  if (small === null) {
    return no('This browser cannot read the picture: take it as JPEG, or type the number.');
  }
  const read = readPhoto(new Uint8Array(await small.arrayBuffer()));
  if (!read.ok) return read;
  const bytes = new Uint8Array(read.value.bytes);
  const hash = new Uint8Array(await subtle.digest('SHA-256', bytes));
  const sha256 = Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return ok({ sha256, bytes });
}

async function smaller(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file);
  const { width, height } = fittedSize(picture, LONGEST);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.drawImage(picture, 0, 0, width, height);
  picture.close();
  return new Promise((resolve, reject) => {
    const done = (blob: Blob | null) => (blob ? resolve(blob) : reject(new Error('no picture')));
    canvas.toBlob(done, 'image/jpeg', QUALITY);
  });
}
