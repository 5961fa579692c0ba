/** The kinds of picture that are kept: what phones and scanners write and every browser shows. */
export const PHOTO_KINDS = ['jpeg', 'png', 'webp'] as const;
export type PhotoKind = (typeof PHOTO_KINDS)[number];

/** The media types that photos are served as, and no other (IANA, media types). */
export const PHOTO_MIMES = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotoMime = (typeof PHOTO_MIMES)[number];
export const PHOTO_MIME: Readonly<Record<PhotoKind, PhotoMime>> = {
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
};

/** The ending of a file's name by its media type. */
export const PHOTO_ENDING: Readonly<Record<PhotoMime, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

/** The largest file, in bytes: a phone's photo has 2 to 6 MB. Common practice, no source. */
export const LARGEST_PHOTO = 8_000_000;
/** The longest side, in pixels. Common practice, no source. */
export const LONGEST_SIDE = 12_000;
/** The most pixels: each takes four bytes when it is shown. Common practice, no source. */
export const MOST_PIXELS = 50_000_000;

const MB = 1_000_000;

/**
 * A file's size in words, rounded up, so that what is over a limit never reads as the limit itself.
 * @param bytes whole number of bytes
 * @example photoSizeText(8_000_001) // '8.1 MB'
 * @example photoSizeText(4_200) // '5 kB'
 */
export function photoSizeText(bytes: number): string {
  if (bytes < MB / 10) return `${Math.ceil(bytes / 1000)} kB`;
  return `${(Math.ceil((bytes * 10) / MB) / 10).toFixed(1).replace(/\.0$/, '')} MB`;
}

/** Said of a file that is larger than `LARGEST_PHOTO`. */
export function tooLargeWords(bytes: number): string {
  return (
    `This file has ${photoSizeText(bytes)}; a photo may have ${photoSizeText(LARGEST_PHOTO)}. ` +
    'Take it in a smaller size, or cut it to the panel.'
  );
}
