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
import { EXIF_HEAD, orientationNotes, readOrientation } from '#lib/foods/photo-orientation';

/** Marker codes of ITU-T T.81 (1992), table B.1. */
const [SOI, EOI, SOS, DQT, DHT, DRI] = [0xd8, 0xd9, 0xda, 0xdb, 0xc4, 0xdd];
const [APP0, APP1, APP2, APP14] = [0xe0, 0xe1, 0xe2, 0xee];
/** Baseline, extended and progressive, all by Huffman: what browsers show. */
const FRAMES: readonly number[] = [0xc0, 0xc1, 0xc2];
const TABLES: readonly number[] = [DQT, DHT, DRI];
const isRestart = (marker: number) => marker >= 0xd0 && marker <= 0xd7;
const isNote = (marker: number) => (marker >= APP0 && marker <= 0xef) || marker === 0xfe;
/** Other frames (lossless, differential, arithmetic) and what goes with them. */
const isForeign = (marker: number) =>
  (marker > 0xc2 && marker <= 0xcf && marker !== DHT) ||
  marker === 0xde ||
  marker === 0xdf ||
  marker === 0xdc;

interface Kept {
  jfif: Uint8Array | null;
  orientation: number;
  readonly parts: Uint8Array[];
  size: { readonly width: number; readonly height: number } | null;
  scans: number;
}

/**
 * Reads a JPEG from its first byte to its last and makes it anew of what the picture needs: frame, tables,
 * scans, colours. A camera's notes (place, time, maker, a small picture) are left out but for the way up,
 * and so is a film or second picture that phones put behind it. Anything else behind it is refused.
 */
export function readJpeg(bytes: Uint8Array): Result<Picture> {
  const view = viewOf(bytes);
  const kept: Kept = { jfif: null, orientation: 1, parts: [], size: null, scans: 0 };
  let at = 2;
  for (;;) {
    if (at + 2 > bytes.length) return CUT_SHORT;
    if (bytes[at] !== 0xff) return broken('JPEG', at);
    // Any number of fill bytes may stand before a marker (B.1.1.2).
    while (bytes[at + 1] === 0xff) at++;
    const marker = bytes[at + 1];
    if (marker === undefined) return CUT_SHORT;
    if (marker === EOI) break;
    if (marker === SOI || marker < 0xc0 || isRestart(marker)) return broken('JPEG', at);
    if (isForeign(marker)) {
      return unfit(
        'kind',
        'This is a kind of JPEG that browsers do not show. Save it as a plain JPEG.',
      );
    }
    if (at + 4 > bytes.length) return CUT_SHORT;
    const end = at + 2 + view.getUint16(at + 2);
    if (end > bytes.length) return CUT_SHORT;
    if (end < at + 4) return broken('JPEG', at);
    const whole = bytes.subarray(at, end);
    if (isNote(marker)) keepOfNote(kept, marker, whole);
    else if (FRAMES.includes(marker)) {
      if (kept.size !== null || !keepFrame(kept, whole)) return broken('JPEG', at);
    } else if (marker === SOS) {
      const after = endOfScan(bytes, end);
      if (kept.size === null) return broken('JPEG', at);
      kept.parts.push(bytes.subarray(at, after));
      kept.scans++;
      at = after;
      continue;
    } else if (TABLES.includes(marker)) kept.parts.push(whole);
    else return broken('JPEG', at);
    at = end;
  }
  const { size, scans } = kept;
  if (size === null || scans === 0) return broken('JPEG', at);
  if (!isPhonesOwn(bytes.subarray(at + 2))) return MORE_BEHIND;
  return ok({ ...size, bytes: madeAnew(kept) });
}

/** Of notes only what changes how the picture looks. */
function keepOfNote(kept: Kept, marker: number, whole: Uint8Array): void {
  const named = (name: string) => lettersAt(whole, 4, name.length) === name;
  if (marker === APP0 && named('JFIF\0') && whole.length >= 18) kept.jfif ??= plainJfif(whole);
  if (marker === APP1 && named(EXIF_HEAD) && kept.orientation === 1) {
    kept.orientation = readOrientation(whole.subarray(4));
  }
  if (marker === APP2 && named('ICC_PROFILE\0')) kept.parts.push(whole);
  // Five letters, version, two flags, the transform of its colours (T.872, 6.5.3).
  if (marker === APP14 && named('Adobe') && whole.length >= 16) {
    kept.parts.push(segment(APP14, whole.subarray(4, 16)));
  }
}

/** The density of pixels, without the small picture that may follow it (ISO/IEC 10918-5). */
function plainJfif(whole: Uint8Array): Uint8Array {
  return segment(APP0, joined([whole.subarray(4, 16), new Uint8Array(2)]));
}

/** Bits, lines, columns, components with three bytes each (T.81, B.2.2). */
function keepFrame(kept: Kept, whole: Uint8Array): boolean {
  const components = whole[9] ?? 0;
  if (whole[4] !== 8 || ![1, 3, 4].includes(components)) return false;
  if (whole.length !== 10 + 3 * components) return false;
  const view = viewOf(whole);
  kept.size = { height: view.getUint16(5), width: view.getUint16(7) };
  kept.parts.push(whole);
  return true;
}

/** Where the coded data of a scan end: at the next marker that is no restart and no stuffed byte. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; ; at++) {
    at = bytes.indexOf(0xff, at);
    if (at < 0) return bytes.length;
    const next = bytes[at + 1];
    if (next === undefined) return bytes.length;
    if (next !== 0 && next !== 0xff && !isRestart(next)) return at;
  }
}

/**
 * Whether what follows a picture is what phones put there, as known from memory: a second JPEG (gain map,
 * preview), a film of the moment (ISO base media, `ftyp`), or the trailer that ends in `SEFT`.
 */
function isPhonesOwn(rest: Uint8Array): boolean {
  const start = rest.findIndex((byte) => byte !== 0);
  if (start < 0) return true;
  const jpeg = rest[start] === 0xff && rest[start + 1] === SOI && rest[start + 2] === 0xff;
  // Its first four bytes are a length and may begin with zeros.
  const film = [0, 1, 2, 3].some((back) => lettersAt(rest, start - back + 4, 4) === 'ftyp');
  return jpeg || film || lettersAt(rest, rest.length - 4, 4) === 'SEFT';
}

function segment(marker: number, content: Uint8Array): Uint8Array {
  const length = content.length + 2;
  return joined([Uint8Array.of(0xff, marker, length >> 8, length & 0xff), content]);
}

function madeAnew({ jfif, orientation, parts }: Kept): Uint8Array<ArrayBuffer> {
  const up =
    orientation === 1
      ? []
      : [segment(APP1, joined([bytesOf(EXIF_HEAD), orientationNotes(orientation)]))];
  return joined([
    Uint8Array.of(0xff, SOI),
    ...(jfif ? [jfif] : []),
    ...up,
    ...parts,
    Uint8Array.of(0xff, EOI),
  ]);
}
