/** The characters of a text file, and how they were read. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  /** Whether the file said so itself by its first bytes, or its bytes can be nothing else. */
  readonly certain: boolean;
}

const MARKS = [
  { bytes: [0xef, 0xbb, 0xbf], encoding: 'utf-8' },
  { bytes: [0xff, 0xfe], encoding: 'utf-16le' },
  { bytes: [0xfe, 0xff], encoding: 'utf-16be' },
] as const;

/** So many bytes are looked at to tell UTF-16 without a mark; a share of zeros that no text in UTF-8 has. */
const LOOKED_AT = 4096;
const SHARE_OF_ZEROS = 0.3;

/**
 * The text of a file that says or doesn't say how it is written: by its byte order mark (Unicode 17, 23.8), else as
 * UTF-16 where every other byte is zero, else as UTF-8, and where it is not that as Windows-1252, as the WHATWG
 * encoding standard reads Latin-1. The mark itself is no part of the text.
 * @example decodeText(Uint8Array.of(0x63, 0x61, 0x66, 0xe9)) // { text: 'café', encoding: 'windows-1252', certain: false }
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const marked = MARKS.find(({ bytes: mark }) => mark.every((byte, at) => bytes[at] === byte));
  if (marked) {
    const rest = bytes.subarray(marked.bytes.length);
    return { text: decode(rest, marked.encoding), encoding: marked.encoding, certain: true };
  }
  const wide = wideOf(bytes);
  if (wide !== null) return { text: decode(bytes, wide), encoding: wide, certain: false };
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return { text, encoding: 'utf-8', certain: true };
  } catch {
    return { text: decode(bytes, 'windows-1252'), encoding: 'windows-1252', certain: false };
  }
}

const decode = (bytes: Uint8Array, encoding: string): string =>
  new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);

function wideOf(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const looked = bytes.subarray(0, LOOKED_AT);
  if (looked.length < 4) return null;
  const zeros = [0, 0];
  for (const [at, byte] of looked.entries())
    if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros.map((count) => count / (looked.length / 2));
  if (odd > SHARE_OF_ZEROS && odd > even) return 'utf-16le';
  return even > SHARE_OF_ZEROS && even > odd ? 'utf-16be' : null;
}
