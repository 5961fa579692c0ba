import { bytesOf, lettersAt, viewOf } from '#lib/foods/photo-bytes';

/** The tag of the way up (CIPA DC-008, Exif 2.32, 4.6.4 A): 1 is upright, 2 to 8 are mirrored or turned. */
const ORIENTATION = 0x0112;
const SHORT = 3;
const ENTRY = 12;

/** What stands before the camera's notes in a JPEG, and in some WebP files. */
export const EXIF_HEAD = 'Exif\0\0';

/**
 * Which way up a camera's notes say that a picture is; 1 where they do not say or cannot be read, since a
 * picture whose notes are broken is still a picture.
 * @param notes the TIFF structure, with or without `Exif` before it
 */
export function readOrientation(notes: Uint8Array): number {
  const tiff = lettersAt(notes, 0, 6) === EXIF_HEAD ? notes.subarray(6) : notes;
  const order = lettersAt(tiff, 0, 2);
  if (tiff.length < 14 || (order !== 'II' && order !== 'MM')) return 1;
  const little = order === 'II';
  const view = viewOf(tiff);
  if (view.getUint16(2, little) !== 42) return 1;
  const first = view.getUint32(4, little);
  if (first + 2 > tiff.length) return 1;
  const count = view.getUint16(first, little);
  for (let index = 0; index < count; index++) {
    const at = first + 2 + index * ENTRY;
    if (at + ENTRY > tiff.length) return 1;
    if (view.getUint16(at, little) !== ORIENTATION) continue;
    const value = view.getUint16(at + 8, little);
    const isOne = view.getUint16(at + 2, little) === SHORT && view.getUint32(at + 4, little) === 1;
    return isOne && value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/**
 * A camera's notes that say the way up and nothing else: no place, no time, no maker, no small picture.
 * @param orientation 1 to 8
 * @returns 26 bytes of TIFF; `readOrientation` of them is the orientation
 */
export function orientationNotes(orientation: number): Uint8Array<ArrayBuffer> {
  const notes = new Uint8Array(26);
  notes.set(bytesOf('MM\0*'));
  const view = viewOf(notes);
  view.setUint32(4, 8);
  view.setUint16(8, 1);
  view.setUint16(10, ORIENTATION);
  view.setUint16(12, SHORT);
  view.setUint32(14, 1);
  view.setUint16(18, orientation);
  return notes;
}
