/** References of HTML that recipes have in their texts; numbers are read beside them. */
const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  deg: '°',
  frac12: '½',
  frac14: '¼',
  frac34: '¾',
  ndash: '–',
  mdash: '—',
  rsquo: '’',
  lsquo: '‘',
  ldquo: '“',
  rdquo: '”',
  hellip: '…',
  times: '×',
  eacute: 'é',
};

/** Elements after which a new line begins. */
const ENDS_LINE = /<(?:br|\/p|\/li|\/div|\/h[1-6])\b[^<>]*>/gi;
const TAG = /<\/?[a-z][^<>]*>/gi;
const REFERENCE = /&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|([a-z]+\d{0,2}));/gi;

/**
 * The lines of a text that may hold HTML: without tags and references, blanks made one, empty lines left out.
 * @example cleanLines('<p>1&frac12; cups<br>oats</p>') // ['1½ cups', 'oats']
 */
export function cleanLines(text: string): string[] {
  return text
    .replace(ENDS_LINE, '\n')
    .replace(TAG, '')
    .replace(REFERENCE, meant)
    .split(/[\n\r\u2028\u2029]+/)
    .map((line) => line.replace(/[\s\u00A0]+/g, ' ').trim())
    .filter((line) => line !== '');
}

function meant(whole: string, decimal?: string, hex?: string, name?: string): string {
  if (name !== undefined) return NAMED[name.toLowerCase()] ?? whole;
  const code = decimal === undefined ? parseInt(hex ?? '', 16) : Number(decimal);
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
}

/** The same as one line. */
export function cleanLine(text: string): string {
  return cleanLines(text).join(' ');
}
