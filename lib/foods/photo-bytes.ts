import { failed, type Failed } from '#lib/result';

/** A picture as it may be kept: measured, and without what does not belong to it. */
export interface Picture {
  /** Pixels as stored, before the picture is turned upright. */
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A refusal of a file, as a problem of the field `photo`. */
export function unfit(code: string, message: string): Failed {
  return failed({ path: 'photo', code, message });
}

/** Said where a file ends before its picture does. */
export const CUT_SHORT = unfit(
  'cut-short',
  'This picture is cut short: the end of the file is missing. Copy it from the phone again.',
);

/** Said where a file is broken at a place. */
export function broken(kind: string, at: number): Failed {
  const message = `This ${kind} is broken at byte ${at}. Copy it from the phone again.`;
  return unfit('broken', message);
}

/** Said where something follows the picture that is no part of it. */
export const MORE_BEHIND = unfit(
  'more-behind',
  'Something else is hidden behind the picture in this file. Save the photo anew as JPEG or PNG, and attach that.',
);

/** The letters of `length` bytes, each byte as one; '' beyond the end. */
export function lettersAt(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length));
}

/** A view for numbers of several bytes. */
export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** Parts one after the other. */
export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  let length = 0;
  for (const part of parts) length += part.length;
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Bytes of letters that have one byte each. */
export function bytesOf(letters: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}
