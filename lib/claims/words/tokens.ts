import { fold } from '#lib/units/plain-words';

/** A word, a run of digits, a mark or the end of a line, with its place in the text. */
export interface Token {
  readonly kind: 'number' | 'word' | 'mark' | 'line' | 'other';
  readonly text: string;
  /** Lower case without accents and apostrophes. */
  readonly folded: string;
  /** Offsets in UTF-16 units; the end stands behind the last one. */
  readonly start: number;
  readonly end: number;
  /** Nothing stands between it and the token before, not even the end of a line. */
  readonly glued: boolean;
  /** A hyphen that only joins words stands before it: 'forty-six', '25-minute'. */
  readonly hyphened: boolean;
}

const CLOCK = String.raw`\d{1,3}(?::\d{2})+(?:[.;:]\d+)?(?!\d)|\d{1,4}(?<parter>[-/.])\d{1,2}\k<parter>\d{1,4}(?!\d)`;
const NUMBER = String.raw`\d+(?:[.,]\d+)*[½¼¾⅓⅔⅛⅜⅝⅞]?|[½¼¾⅓⅔⅛⅜⅝⅞]`;
const WORD = String.raw`\p{L}[\p{L}\p{M}]*(?:['’]\p{L}+)*`;
const SCAN = new RegExp(`(${CLOCK})|(${NUMBER})|(${WORD})|(\\r\\n?|\\n)|(\\S)`, 'gu');

/** Dots that lead from a name to its number, or that a pause is written with. */
const LEADERS = /\.{3,}|…/g;

/** As many blanks, so that places stay. */
const blank = (dots: string) => ' '.repeat(dots.length);

/**
 * The tokens of a text in order. Clock times and dates are of the kind `other`, so that no number is read in them;
 * hyphens that join words, or a number and a word, are left out and noted on the token behind them.
 * @example tokenize('forty-six g').map(({ folded }) => folded) // ['forty', 'six', 'g']
 */
export function tokenize(text: string): Token[] {
  const found: Token[] = [];
  // No token is glued to the start of the text or of a line.
  let last = -1;
  let hyphen = false;
  for (const match of text.replaceAll(LEADERS, blank).matchAll(SCAN)) {
    const [whole, clock, , number, word, line] = match;
    const start = match.index;
    const glued = start === last;
    const end = start + whole.length;
    last = line === undefined ? end : -1;
    if (glued && whole === '-' && (joins(text, start) || cut(text, start))) {
      hyphen = true;
      continue;
    }
    found.push({
      kind: kindOf(clock, number, word, line),
      text: whole,
      folded: word === undefined ? whole : foldWord(whole),
      start,
      end,
      glued: glued && !hyphen,
      hyphened: hyphen,
    });
    hyphen = false;
  }
  return found;
}

/** Most words have no accents: those need no search for them. Captions leave out apostrophes, so all are left out. */
const foldWord = (word: string) =>
  /^[a-z]+$/.test(word) ? word : fold(word).replaceAll(/['’]/g, '');

function kindOf(clock?: string, number?: string, word?: string, line?: string): Token['kind'] {
  if (clock !== undefined) return 'other';
  if (number !== undefined) return 'number';
  if (word !== undefined) return 'word';
  return line === undefined ? 'mark' : 'line';
}

/** A hyphen at the end of a line, or with a blank behind it by mistake: 'fifty- two'. */
const cut = (text: string, at: number) =>
  /\p{L}/u.test(text[at - 1] ?? '') && /^-\s{1,2}\p{L}/u.test(text.slice(at, at + 4));

/** A hyphen between words, or between a number and a word; between two numbers it is a dash. */
function joins(text: string, at: number): boolean {
  return (
    /[\p{L}\p{M}\d]/u.test(text[at - 1] ?? '') &&
    /[\p{L}\d]/u.test(text[at + 1] ?? '') &&
    !(/\d/.test(text[at - 1] ?? '') && /\d/.test(text[at + 1] ?? ''))
  );
}

/** Words by which a line that rolls in is recognised as the one before. */
const ROLLING = 2;
const LONGEST_ROLL = 24;

/**
 * The tokens as they were spoken: lines run on, and what a caption repeats of the line before, at least two words of
 * it or all, is left out.
 */
export function asSpoken(tokens: readonly Token[]): Token[] {
  const kept: Token[] = [];
  let line: Token[] = [];
  let before: Token[] = [];
  const close = () => {
    const again = repeated(before, line);
    // Not one by one into a call: a line may be as long as the text.
    for (let at = again; at < line.length; at += 1) kept.push(line[at] as Token);
    if (line.length > 0) before = line;
    line = [];
  };
  for (const token of tokens) {
    if (token.kind === 'line') close();
    else line.push(token);
  }
  close();
  return kept;
}

function repeated(before: readonly Token[], line: readonly Token[]): number {
  const most = Math.min(before.length, line.length, LONGEST_ROLL);
  for (let length = most; length > 0; length -= 1) {
    if (length < ROLLING && length < before.length) return 0;
    const from = before.length - length;
    let at = 0;
    while (at < length && before[from + at]?.folded === line[at]?.folded) at += 1;
    if (at === length) return length;
  }
  return 0;
}
