/** The words of a text that is written in one row, without apostrophes, as tokens are folded. */
export const list = (text: string): string[] =>
  text
    .replaceAll("'", '')
    .split(/\s+/)
    .filter((word) => word !== '');

export const set = (text: string): ReadonlySet<string> => new Set(list(text));

/** Phrases parted by commas. */
export const phrasesOf = (text: string): string[] =>
  text
    .split(',')
    .map((phrase) => phrase.trim())
    .filter((phrase) => phrase !== '');

/** Each phrase of a row with the same value. */
export const all = <T>(text: string, value: T): [string, T][] =>
  phrasesOf(text).map((phrase) => [phrase, value]);

/** Frames with `{}` in place of each of the words: `framed('the {}, a {}', ['pan'])`. */
export const framed = (frames: string, words: readonly string[]): string[] =>
  phrasesOf(frames).flatMap((frame) => words.map((word) => frame.replace('{}', word)));
