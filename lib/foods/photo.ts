import { ok, type Failed, type Result } from '#lib/result';
import { lettersAt, unfit, type Picture } from '#lib/foods/photo-bytes';
import { readJpeg } from '#lib/foods/photo-jpeg';
import {
  LARGEST_PHOTO,
  LONGEST_SIDE,
  MOST_PIXELS,
  tooLargeWords,
  type PhotoKind,
} from '#lib/foods/photo-kinds';
import { PNG_SIGNATURE, readPng } from '#lib/foods/photo-png';
import { readWebp } from '#lib/foods/photo-webp';

/** A photo as it is kept. */
export interface Photo extends Picture {
  readonly kind: PhotoKind;
}

/**
 * Recognises a photo by its bytes alone, whatever its name and its sender say, and reads it to its end: what
 * is cut short, broken, too large or carries something in front or behind is refused with a sentence. The
 * bytes that come back hold the picture and its way up, and nothing of where, when and by what it was taken.
 *
 * Law: reading what was read gives the same bytes again.
 * @example readPhoto(bytesOf('<svg>')) // refused: "This is text, a drawing or a web page, and no photo. …"
 */
export function readPhoto(bytes: Uint8Array): Result<Photo> {
  if (bytes.length === 0) return unfit('empty', 'This file is empty.');
  if (bytes.length > LARGEST_PHOTO) return unfit('too-large', tooLargeWords(bytes.length));
  const kind = kindOf(bytes);
  if (kind === null) return otherKind(bytes);
  const read = READERS[kind](bytes);
  if (!read.ok) return read;
  const { width, height } = read.value;
  if (width === 0 || height === 0) {
    return unfit('no-size', 'This picture does not say how large it is. Save it anew as JPEG.');
  }
  if (Math.max(width, height) > LONGEST_SIDE || width * height > MOST_PIXELS) {
    const most = `${LONGEST_SIDE} pixels a side and ${MOST_PIXELS / 1_000_000} million in all`;
    const message = `This picture has ${width} × ${height} pixels; at most ${most} are kept. Save it smaller.`;
    return unfit('too-many-pixels', message);
  }
  return ok({ kind, ...read.value });
}

const READERS: Readonly<Record<PhotoKind, (bytes: Uint8Array) => Result<Picture>>> = {
  jpeg: readJpeg,
  png: readPng,
  webp: readWebp,
};

const JPEG_START = '\xff\xd8\xff';

function kindOf(bytes: Uint8Array): PhotoKind | null {
  if (lettersAt(bytes, 0, 3) === JPEG_START) return 'jpeg';
  if (lettersAt(bytes, 0, 8) === PNG_SIGNATURE) return 'png';
  const riff = bytes.length >= 12 && lettersAt(bytes, 0, 4) === 'RIFF';
  return riff && lettersAt(bytes, 8, 4) === 'WEBP' ? 'webp' : null;
}

const INSTEAD = 'Attach a photo as JPEG, PNG or WebP.';

/** Brands of the first box of ISO base media files that hold pictures by HEVC (ISO/IEC 23008-12, annex B). */
const HEIC = /^(?:heic|heix|heim|heis|hevc|hevx|mif1|msf1)$/;

/** Other files by their first letters (from memory). */
const OTHERS: readonly (readonly [RegExp, string])[] = [
  [/^GIF8/, 'a GIF'],
  [/^BM/, 'a BMP'],
  [/^(?:II\*\0|MM\0\*|II\+\0|MM\0\+)/, 'a TIFF or raw picture'],
  [/^%PDF/, 'a PDF'],
  [/^PK/, 'a packed file'],
];

/** What a file is that is none of the three kinds, as far as that can be told, and what to do instead. */
function otherKind(bytes: Uint8Array): Failed {
  const start = lettersAt(bytes, 0, 64);
  const brand = /^[\s\S]{4}ftyp([\s\S]{4})/.exec(start)?.[1];
  if (brand !== undefined && HEIC.test(brand)) {
    return unfit(
      'heic',
      'This is a HEIC picture, which most browsers cannot show. Set the phone’s camera to save JPEG ' +
        '(“most compatible”), or save this photo as JPEG, and attach that.',
    );
  }
  if (brand !== undefined) {
    const what = brand.startsWith('avi') ? 'an AVIF picture' : 'a film';
    return unfit('kind', `This is ${what}. ${INSTEAD}`);
  }
  // Before the letters of other kinds: a picture behind a script is neither.
  if (holdsPicture(bytes)) {
    return unfit('more-before', 'Something stands before the picture in this file. Save it anew.');
  }
  if (/^(?:\xef\xbb\xbf)?\s*[<#{]/.test(start)) {
    return unfit('kind', `This is text, a drawing or a web page, and no photo. ${INSTEAD}`);
  }
  const other = OTHERS.find(([letters]) => letters.test(start))?.[1];
  return unfit('kind', `This is ${other ?? 'no picture that is known here'}. ${INSTEAD}`);
}

/** How far in a picture is looked for that does not stand at the start. */
const LOOKED_AT = 65_536;

function holdsPicture(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, LOOKED_AT);
  let letters = '';
  // In pieces: a function takes only so many arguments.
  for (let at = 0; at < start.length; at += 4096) letters += lettersAt(start, at, 4096);
  return letters.includes(PNG_SIGNATURE) || /\xff\xd8\xff[\xdb\xe0\xe1\xee]/.test(letters);
}
