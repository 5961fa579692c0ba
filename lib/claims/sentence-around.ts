/** Ends of sentences, and of lines that end one: full stops between digits are none. */
const ENDS = /[.!?…]["”’)]?(?=\s|$)|\n{2,}/g;

/** A sentence longer than this is cut, in UTF-16 units: captions often have no stops. */
const MOST = 240;

/** A sentence in a text. */
export interface Sentence {
  readonly start: number;
  /** Behind its last unit. */
  readonly end: number;
  /** In one line. */
  readonly words: string;
}

/**
 * The sentence in which a stretch of a text stands; where nothing ends it, some words on each side.
 * @example sentenceAround('Done. The tray is 640 calories. Eat.', 18, 30).words // 'The tray is 640 calories.'
 */
export function sentenceAround(text: string, start: number, end: number): Sentence {
  const from = Math.max(0, start - MOST / 2);
  const until = Math.min(text.length, end + MOST / 2);
  let first = from === 0 ? 0 : wordAt(text, from);
  for (const match of text.slice(from, start).matchAll(ENDS)) {
    first = from + match.index + match[0].length;
  }
  ENDS.lastIndex = 0;
  const stop = ENDS.exec(text.slice(end, until));
  ENDS.lastIndex = 0;
  const last = stop
    ? end + stop.index + stop[0].length
    : until === text.length
      ? until
      : wordAt(text, until);
  return { start: first, end: last, words: oneLine(text.slice(first, last)) };
}

/** The beginning of the last word before an offset. */
function wordAt(text: string, at: number): number {
  const blank = text.slice(0, at).search(/\s\S*$/);
  return blank < 0 ? at : blank + 1;
}

/** Words on one line, with single blanks. */
export const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();
