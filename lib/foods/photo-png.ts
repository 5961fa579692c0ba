import { ok, type Result } from '#lib/result';
import {
  broken,
  bytesOf,
  CUT_SHORT,
  joined,
  lettersAt,
  MORE_BEHIND,
  unfit,
  viewOf,
  type Picture,
} from '#lib/foods/photo-bytes';
import { orientationNotes, readOrientation } from '#lib/foods/photo-orientation';

/** PNG (third edition), 5.2. */
export const PNG_SIGNATURE = '\x89PNG\r\n\x1a\n';

/** Chunks that change how the picture looks (11.2, 11.3); texts, times, notes and moving parts are none. */
const KEPT: ReadonlySet<string> = new Set([
  ...['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS'],
  ...['gAMA', 'cHRM', 'sRGB', 'iCCP', 'sBIT', 'cICP', 'pHYs', 'bKGD'],
]);

/** The bit depths that each kind of colour may have (table 11.1). */
const DEPTHS: Readonly<Record<number, readonly number[]>> = {
  0: [1, 2, 4, 8, 16],
  2: [8, 16],
  3: [1, 2, 4, 8],
  4: [8, 16],
  6: [8, 16],
};

/**
 * Reads a PNG from its first byte to its last, each chunk held against its checksum, and makes it anew of
 * what the picture needs. Texts, times and a camera's notes are left out but for the way up; of a moving
 * picture the still one stays. Anything behind its end is refused.
 */
export function readPng(bytes: Uint8Array): Result<Picture> {
  const view = viewOf(bytes);
  const before: Uint8Array[] = [];
  const data: Uint8Array[] = [];
  let [orientation, at] = [1, PNG_SIGNATURE.length];
  for (let first = true; ; first = false) {
    if (at + 12 > bytes.length) return CUT_SHORT;
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length) return CUT_SHORT;
    const whole = bytes.subarray(at, end);
    const name = nameOf(whole);
    const content = whole.subarray(8, -4);
    if (view.getUint32(end - 4) !== crc32(whole.subarray(4, -4))) return broken('PNG', at);
    if (first !== (name === 'IHDR')) return broken('PNG', at);
    if (first && !isHeader(content)) return broken('PNG', at);
    // A capital first letter says that the picture cannot be shown without it (5.4).
    if (!KEPT.has(name) && /^[A-Z]/.test(name)) {
      return unfit(
        'kind',
        'This is a kind of PNG that browsers do not show. Save it as a plain PNG.',
      );
    }
    if (name === 'eXIf' && orientation === 1) orientation = readOrientation(content);
    if (name === 'IDAT') data.push(whole);
    else if (name !== 'IEND' && KEPT.has(name) && data.length === 0) before.push(whole);
    at = end;
    if (name === 'IEND') break;
  }
  const [palette, hasPalette] = [bytes[25] === 3, before.some((each) => nameOf(each) === 'PLTE')];
  if (data.length === 0 || (palette && !hasPalette)) return broken('PNG', at);
  if (at < bytes.length) return MORE_BEHIND;
  const up = orientation === 1 ? [] : [chunk('eXIf', orientationNotes(orientation))];
  const parts = [
    bytesOf(PNG_SIGNATURE),
    ...before,
    ...up,
    ...data,
    chunk('IEND', new Uint8Array()),
  ];
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  return ok({ width, height, bytes: joined(parts) });
}

const nameOf = (whole: Uint8Array) => lettersAt(whole, 4, 4);

/** Width, height, bit depth, kind of colour, compression, filter, interlace (11.2.1). */
function isHeader(content: Uint8Array): boolean {
  const [depth = 0, colour = 0, compression, filter, interlace = 2] = content.subarray(8);
  return (
    content.length === 13 &&
    (DEPTHS[colour]?.includes(depth) ?? false) &&
    compression === 0 &&
    filter === 0 &&
    interlace <= 1
  );
}

function chunk(name: string, content: Uint8Array): Uint8Array {
  const named = joined([bytesOf(name), content]);
  const ends = new Uint8Array(8);
  viewOf(ends).setUint32(0, content.length);
  viewOf(ends).setUint32(4, crc32(named));
  return joined([ends.subarray(0, 4), named, ends.subarray(4)]);
}

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/**
 * The checksum of PNG and zip (ISO 3309; PNG, annex D).
 * @example crc32(bytesOf('123456789')) // 0xcbf43926
 */
export function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = (TABLE[(value ^ byte) & 0xff] ?? 0) ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}
