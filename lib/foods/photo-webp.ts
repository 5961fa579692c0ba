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

/** Bits of the first byte of VP8X (RFC 9649, 2.7). */
const [ANIMATION, NOTES, XMP] = [0x02, 0x08, 0x04];

interface Chunk {
  readonly name: string;
  readonly content: Uint8Array;
  readonly at: number;
}

/**
 * Reads a WebP from its first byte to its last and makes it anew of what the picture needs: pixels,
 * transparency, colours. A camera's notes are left out but for the way up. Moving pictures are refused, and
 * anything behind the end (RFC 9649).
 */
export function readWebp(bytes: Uint8Array): Result<Picture> {
  const end = 8 + viewOf(bytes).getUint32(4, true);
  if (end > bytes.length) return CUT_SHORT;
  if (end < bytes.length) return MORE_BEHIND;
  const chunks = chunksOf(bytes);
  if (!chunks.ok) return chunks;
  const [first] = chunks.value;
  const pixels = chunks.value.filter(({ name }) => name === 'VP8 ' || name === 'VP8L');
  const [picture] = pixels;
  const extended = first?.name === 'VP8X' ? first : null;
  if (extended && (extended.content.length !== 10 || (extended.content[0] ?? 0) & ANIMATION)) {
    return extended.content.length === 10 ? MOVES : broken('WebP', extended.at);
  }
  if (!first || !picture || pixels.length !== 1) return broken('WebP', first?.at ?? 12);
  if (!extended && first !== picture) return broken('WebP', first.at);
  const size = picture.name === 'VP8 ' ? lossySize(picture.content) : losslessSize(picture.content);
  if (size === null) return broken('WebP', picture.at);
  if (!extended) return ok({ ...size, bytes: fileOf([picture]) });
  const canvas = { width: u24(extended.content, 4) + 1, height: u24(extended.content, 7) + 1 };
  if (canvas.width !== size.width || canvas.height !== size.height) {
    return broken('WebP', picture.at);
  }
  return ok({ ...size, bytes: madeAnew(extended, picture, chunks.value) });
}

const MOVES = unfit('moves', 'This picture moves. Attach a still photo of the panel.');

/** The chunks behind the twelve bytes of the head; each is padded to an even length (2.3). */
function chunksOf(bytes: Uint8Array): Result<readonly Chunk[]> {
  const view = viewOf(bytes);
  const chunks: Chunk[] = [];
  for (let at = 12; at < bytes.length;) {
    if (at + 8 > bytes.length) return CUT_SHORT;
    const length = view.getUint32(at + 4, true);
    const end = at + 8 + length;
    if (end + (length % 2) > bytes.length) return CUT_SHORT;
    chunks.push({ name: lettersAt(bytes, at, 4), content: bytes.subarray(at + 8, end), at });
    at = end + (length % 2);
  }
  return ok(chunks);
}

type Size = Pick<Picture, 'width' | 'height'>;

/** A key frame: three bytes of tag, the start code, twice 14 bits of size (RFC 6386, 9.1). */
function lossySize(content: Uint8Array): Size | null {
  if (content.length < 10 || ((content[0] ?? 1) & 1) !== 0) return null;
  if (lettersAt(content, 3, 3) !== '\x9d\x01\x2a') return null;
  const view = viewOf(content);
  return { width: view.getUint16(6, true) & 0x3fff, height: view.getUint16(8, true) & 0x3fff };
}

/** The signature 0x2f, then 14 bits of width and 14 of height, each less one (RFC 9649, 3.4). */
function losslessSize(content: Uint8Array): Size | null {
  if (content.length < 5 || content[0] !== 0x2f) return null;
  const bits = viewOf(content).getUint32(1, true);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

const u24 = (bytes: Uint8Array, at: number) =>
  (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8) | ((bytes[at + 2] ?? 0) << 16);

function madeAnew(
  extended: Chunk,
  picture: Chunk,
  chunks: readonly Chunk[],
): Uint8Array<ArrayBuffer> {
  const one = (name: string) => chunks.find((each) => each.name === name);
  const notes = one('EXIF');
  const orientation = notes ? readOrientation(notes.content) : 1;
  const head = extended.content.slice();
  head[0] = (head[0] ?? 0) & ~(NOTES | XMP);
  if (orientation !== 1) head[0] |= NOTES;
  const parts = [
    { name: 'VP8X', content: head },
    one('ICCP'),
    one('ALPH'),
    picture,
    orientation === 1 ? undefined : { name: 'EXIF', content: orientationNotes(orientation) },
  ];
  return fileOf(parts.flatMap((part) => part ?? []));
}

function fileOf(chunks: readonly Pick<Chunk, 'name' | 'content'>[]): Uint8Array<ArrayBuffer> {
  const body = chunks.flatMap(({ name, content }) => [
    bytesOf(name),
    littleEndian(content.length),
    content,
    new Uint8Array(content.length % 2),
  ]);
  const whole = joined([bytesOf('WEBP'), ...body]);
  return joined([bytesOf('RIFF'), littleEndian(whole.length), whole]);
}

function littleEndian(value: number): Uint8Array {
  const bytes = new Uint8Array(4);
  viewOf(bytes).setUint32(0, value, true);
  return bytes;
}
