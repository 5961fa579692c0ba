/** A word, number or sign of a line with its place. */
export interface Token {
  readonly kind: 'number' | 'word' | 'sign';
  readonly text: string;
  /** Lower case, without accents, with a plain hyphen and apostrophe. */
  readonly folded: string;
  readonly start: number;
  readonly end: number;
  /** Whether a blank stands before it. */
  readonly spaced: boolean;
}

const BLANK = /\s/;
const LETTER = /[\p{L}\p{M}]/u;
const DIGIT = /\d/;
/** Digits of other scripts and the like: numbers, though none that is read. */
const NUMERAL = /\p{N}/u;
/** Pictures and what varies them: they name nothing here. */
const PICTURE =
  /[\p{Extended_Pictographic}\p{Emoji_Modifier}\p{Regional_Indicator}\ufe00-\ufe0f\u20e3]/u;
const JOINS_DIGITS = /[.,/\u2044']/;
const JOINS_LETTERS = /['’\-\u2010\u2011]/;
const APOSTROPHE = /’/g;
const HYPHEN = /[\u2010\u2011]/g;

/**
 * Cuts a line into words, numbers and signs, in one pass. A number is everything that is written together as
 * one: '1,500', '1½', '1/2', '1e9' (which is read as none). A hyphen or apostrophe between letters belongs to
 * the word; 'x' before a digit is a word of its own.
 * `tokenize('2x400g')` → '2', 'x', '400', 'g'.
 */
export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  let spaced = false;
  let at = 0;
  while (at < text.length) {
    const sign = charAt(text, at);
    if (BLANK.test(sign) || PICTURE.test(sign)) {
      spaced = true;
      at += sign.length;
      continue;
    }
    const start = at;
    const kind = kindOf(text, at);
    if (kind === 'number') at = numberEnd(text, at);
    else if (kind === 'word') at = wordEnd(text, at);
    else at += sign.length;
    const written = text.slice(start, at);
    tokens.push({ kind, text: written, folded: foldWord(written), start, end: at, spaced });
    spaced = false;
  }
  return tokens;
}

function charAt(text: string, at: number): string {
  return String.fromCodePoint(text.codePointAt(at) ?? 0);
}

function kindOf(text: string, at: number): Token['kind'] {
  const sign = charAt(text, at);
  if (NUMERAL.test(sign)) return 'number';
  const next = text[at + 1] ?? '';
  const before = text[at - 1] ?? '';
  if (sign === '.' && DIGIT.test(next) && !LETTER.test(before)) return 'number';
  return LETTER.test(sign) ? 'word' : 'sign';
}

function numberEnd(text: string, from: number): number {
  let at = from + (text[from] === '.' ? 1 : 0);
  for (;;) {
    const sign = text[at] ?? '';
    const next = text[at + 1] ?? '';
    if (sign === '') return at;
    if (NUMERAL.test(charAt(text, at))) at += charAt(text, at).length;
    else if (JOINS_DIGITS.test(sign) && DIGIT.test(next)) at += 2;
    else break;
  }
  // An exponent makes it a number that recipes do not have; it stays one token, to be told as a whole.
  const power = /^[eE][+-]?\d/.test(text.slice(at, at + 3));
  if (!power) return at;
  at += 2;
  while (DIGIT.test(text[at] ?? '')) at += 1;
  return at;
}

function wordEnd(text: string, from: number): number {
  let at = from;
  for (;;) {
    const sign = at < text.length ? charAt(text, at) : '';
    if (sign === '') return at;
    if (LETTER.test(sign)) at += sign.length;
    else if (DIGIT.test(sign) && !/^x$/i.test(text.slice(from, at))) at += 1;
    else if (JOINS_LETTERS.test(sign) && LETTER.test(text[at + 1] ?? '')) at += 1;
    else return at;
  }
}

/** Full-width letters, digits and signs in their plain form, one for one. */
export function plainWidth(text: string): string {
  return text.replace(/[\uff01-\uff5e]/g, (sign) =>
    String.fromCharCode(sign.charCodeAt(0) - 0xfee0),
  );
}

/** A word in the form that the tables of words hold. */
export function foldWord(word: string): string {
  const plain = word.toLowerCase();
  if (/^[a-z0-9]*$/.test(plain)) return plain;
  return plain
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(APOSTROPHE, "'")
    .replace(HYPHEN, '-');
}

/** The words of some tokens as written, with a blank where one stood. */
export function textOf(tokens: readonly Token[]): string {
  return tokens.map((token, index) => (index > 0 && token.spaced ? ' ' : '') + token.text).join('');
}
