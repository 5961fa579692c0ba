/** Signs that nobody sees: zero-width and direction marks, soft hyphens, controls that are no blank. */
const UNSEEN = /[\p{Cf}\p{Cc}]/gu;
const BLANK_CONTROL = /[\t\n\v\f\r\u0085]/;

/** Marks that show what follows backwards, so that what is read is not what is seen. */
const OVERRIDE = /[\u202d\u202e]/;

/**
 * A text without the signs that nobody sees, and how many they were; a control that is no blank leaves a blank,
 * since it divided what stood around it. `overridden` is true where direction marks turned the text round.
 */
export function withoutUnseen(text: string): {
  readonly text: string;
  readonly removed: number;
  readonly overridden: boolean;
} {
  let removed = 0;
  const clean = text.replace(UNSEEN, (sign) => {
    if (BLANK_CONTROL.test(sign)) return sign;
    removed += 1;
    return /\p{Cc}/u.test(sign) ? ' ' : '';
  });
  return { text: clean, removed, overridden: OVERRIDE.test(text) };
}

const BULLETS =
  /^(?:[-–—−*•·‣▪◦●○➢➤→►▸>☐☑☒✓✔□▢■+]\s+|[•·‣▪◦●○➢➤→►▸☐☑☒✓✔□▢■]\s*|\[[ xX]?\]\s*|\(?\d{1,3}\)\s+|\d{1,3}\.\s+|#+\s+)/u;

/** How many letters of bullets, check boxes and numbering stand before a line. */
export function bulletLength(line: string): number {
  let at = line.length - line.trimStart().length;
  for (let count = 0; count < 3; count += 1) {
    const found = BULLETS.exec(line.slice(at, at + 12));
    if (!found || at + found[0].length >= line.length) break;
    at += found[0].length;
  }
  return at;
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  ensp: ' ',
  emsp: ' ',
  thinsp: ' ',
  frac12: '½',
  half: '½',
  frac14: '¼',
  frac34: '¾',
  frac13: '⅓',
  frac23: '⅔',
  frac15: '⅕',
  frac18: '⅛',
  frac38: '⅜',
  frac58: '⅝',
  frac78: '⅞',
  frasl: '\u2044',
  ndash: '–',
  mdash: '—',
  minus: '−',
  times: '×',
  deg: '°',
  hellip: '…',
  bull: '•',
  middot: '·',
  lsquo: '‘',
  rsquo: '’',
  ldquo: '“',
  rdquo: '”',
  laquo: '«',
  raquo: '»',
  eacute: 'é',
  egrave: 'è',
  ecirc: 'ê',
  euml: 'ë',
  agrave: 'à',
  aacute: 'á',
  acirc: 'â',
  auml: 'ä',
  aring: 'å',
  aelig: 'æ',
  ccedil: 'ç',
  iacute: 'í',
  icirc: 'î',
  iuml: 'ï',
  ntilde: 'ñ',
  oacute: 'ó',
  ocirc: 'ô',
  ouml: 'ö',
  oslash: 'ø',
  uacute: 'ú',
  ucirc: 'û',
  uuml: 'ü',
  szlig: 'ß',
  shy: '',
  zwj: '',
  zwnj: '',
  copy: '©',
  reg: '®',
  trade: '™',
};

function entity(whole: string, name: string): string {
  if (!name.startsWith('#')) return ENTITIES[name] ?? ENTITIES[name.toLowerCase()] ?? whole;
  const hex = /^#x/i.test(name);
  const code = parseInt(name.slice(hex ? 2 : 1), hex ? 16 : 10);
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
}

/** Elements that stand on lines of their own. */
const BREAKING =
  /^\/?(?:br|li|p|div|tr|ul|ol|dl|dt|dd|table|h[1-6]|section|article|header|footer|blockquote|hr)$/i;
/** A tag is never longer than this; what is, is text. */
const LONGEST_TAG = 2000;

/**
 * Text without markup: tags dropped, list items and breaks as line breaks, entities as the signs they name.
 * A "<" that begins no tag stays ('<5 g'). Linear in the length. `tags` counts what was dropped.
 */
export function withoutMarkup(text: string): { readonly text: string; readonly tags: number } {
  const pieces: string[] = [];
  let tags = 0;
  let at = 0;
  // Where the next ">" stands: looked for once, not for each "<".
  let close = -1;
  for (;;) {
    const open = text.indexOf('<', at);
    if (open < 0) break;
    if (close < open) close = text.indexOf('>', open);
    if (close < 0) break;
    const name = /^(?:!--|[/!]?[a-z][a-z0-9]*)/i.exec(text.slice(open + 1, open + 24))?.[0];
    const inside = text.lastIndexOf('<', close);
    if (name === undefined || inside !== open || close - open > LONGEST_TAG) {
      pieces.push(text.slice(at, open + 1));
      at = open + 1;
      continue;
    }
    pieces.push(text.slice(at, open));
    if (BREAKING.test(name)) pieces.push('\n');
    else if (/^\/?t[dh]$/i.test(name)) pieces.push(' ');
    tags += 1;
    at = close + 1;
  }
  pieces.push(text.slice(at));
  const plain = pieces.join('').replace(/&(#?[a-z0-9]{1,12});/gi, entity);
  return { text: plain, tags };
}
