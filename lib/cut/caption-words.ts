/** References that WebVTT names itself (W3C WebVTT, 4.2.2); numbers are read beside them. */
const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  nbsp: '\u00A0',
  lrm: '\u200E',
  rlm: '\u200F',
  quot: '"',
  apos: "'",
};

/** Tags of WebVTT and SubRip, with WebVTT's times within a cue; and SubRip's position codes, as `{\an8}`. */
export const TAGS = /<\/?[a-z][^<>]*>|<\d+(?::\d+)+(?:[.,]\d+)?>|\{\\[^{}]*\}/gi;
export const REFERENCE = /&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|([a-z]+));/gi;

/**
 * What a cue says, without tags, references and marks of direction, its lines apart.
 * @example captionWords('<v Runa>180&nbsp;kcal &amp; <i>done</i>') // '180 kcal & done'
 */
export function captionWords(text: string): string {
  return spelledOut(text)
    .replace(/[ \t\u00A0]+/g, ' ')
    .replace(/ ?\n ?/g, '\n')
    .trim();
}

/** The same with its blanks as they stand: part of a cue may begin or end with one. */
export function spelledOut(text: string): string {
  return text
    .replace(TAGS, '')
    .replace(REFERENCE, (whole, decimal?: string, hex?: string, name?: string) => {
      if (name !== undefined) return NAMED[name.toLowerCase()] ?? whole;
      const code = decimal === undefined ? parseInt(hex ?? '', 16) : Number(decimal);
      return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
    })
    .replace(/[\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/g, '');
}
