import { readFileSync } from 'node:fs';

/**
 * How far each letter of a TrueType font moves on, in thousandths of the type's size: its tables `cmap` (format 4 or
 * 12), `hhea`, `hmtx` and `head` (ISO/IEC 14496-22, OpenType). Letters without a form of their own are left out.
 * @param file path of the font
 */
export function fontAdvances(file: string): ReadonlyMap<string, number> {
  const bytes = readFileSync(file);
  const tables = new Map(
    Array.from({ length: bytes.readUInt16BE(4) }, (_, at) => {
      const record = 12 + at * 16;
      return [bytes.toString('latin1', record, record + 4), bytes.readUInt32BE(record + 8)];
    }),
  );
  const table = (name: string): number => {
    const at = tables.get(name);
    if (at === undefined) throw new Error(`${file} has no table ${name}`);
    return at;
  };
  const perEm = bytes.readUInt16BE(table('head') + 18);
  const measured = bytes.readUInt16BE(table('hhea') + 34);
  const advance = (glyph: number) =>
    bytes.readUInt16BE(table('hmtx') + Math.min(glyph, measured - 1) * 4);
  return new Map(
    [...glyphs(bytes, table('cmap'))].map(([code, glyph]) => [
      String.fromCodePoint(code),
      Math.ceil((advance(glyph) * 1000) / perEm),
    ]),
  );
}

/** Glyphs by code point, of the widest Unicode table there is. */
function glyphs(bytes: Buffer, cmap: number): Map<number, number> {
  const subtables = Array.from({ length: bytes.readUInt16BE(cmap + 2) }, (_, at) => {
    const offset = cmap + bytes.readUInt32BE(cmap + 8 + at * 8);
    return { offset, format: bytes.readUInt16BE(offset) };
  });
  const whole = subtables.find(({ format }) => format === 12);
  const basic = subtables.find(({ format }) => format === 4);
  if (whole) return groups(bytes, whole.offset);
  if (basic) return segments(bytes, basic.offset);
  throw new Error('The font has no Unicode table of format 4 or 12.');
}

function groups(bytes: Buffer, at: number): Map<number, number> {
  const found = new Map<number, number>();
  for (let group = 0; group < bytes.readUInt32BE(at + 12); group += 1) {
    const [first, last, glyph] = [0, 4, 8].map((of) =>
      bytes.readUInt32BE(at + 16 + group * 12 + of),
    );
    for (let code = first ?? 0; code <= (last ?? -1); code += 1) {
      found.set(code, (glyph ?? 0) + code - (first ?? 0));
    }
  }
  return found;
}

function segments(bytes: Buffer, at: number): Map<number, number> {
  const found = new Map<number, number>();
  const count = bytes.readUInt16BE(at + 6) / 2;
  const [ends, starts, deltas, offsets] = [0, 1, 2, 3].map(
    (of) => at + 14 + of * count * 2 + (of > 0 ? 2 : 0),
  ) as [number, number, number, number];
  for (let segment = 0; segment < count; segment += 1) {
    const place = segment * 2;
    const [start, end] = [bytes.readUInt16BE(starts + place), bytes.readUInt16BE(ends + place)];
    const delta = bytes.readUInt16BE(deltas + place);
    const offset = bytes.readUInt16BE(offsets + place);
    for (let code = start; code <= end && code < 0xffff; code += 1) {
      const direct = offset === 0;
      const read = direct
        ? code
        : bytes.readUInt16BE(offsets + place + offset + (code - start) * 2);
      const glyph = read === 0 && !direct ? 0 : (read + delta) & 0xffff;
      if (glyph !== 0) found.set(code, glyph);
    }
  }
  return found;
}
