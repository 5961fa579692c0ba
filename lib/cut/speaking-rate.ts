import type { SpokenLine } from '#lib/cut/spoken';

/** Words a minute of US English narration (National Center for Voice and Speech). */
export const USUAL_WORDS_PER_MINUTE = 150;
/** Less than this says little about a person's rate (common practice, no source). */
const LEAST_WORDS = 60;
/** A pause that is no longer talk (common practice, no source). */
const PAUSE_MS = 2000;

/** Words as they are spoken: a number counts as the words it takes. `wordsIn('1,250 kcal')` → 7 */
export function wordsIn(text: string): number {
  const tokens = text.match(/[\p{L}\p{N}][\p{L}\p{N}’'.,-]*/gu) ?? [];
  return tokens.reduce((sum, token) => sum + spokenLength(token), 0);
}

/**
 * Spoken words of a token: letters are one; of a number each place but zero one, with "hundred", "thousand", "and" and
 * "point" where they are said; a number of one or two digits up to twenty, and full tens, are one.
 */
function spokenLength(token: string): number {
  const [, whole, decimals] = /^(\d[\d,]*)(?:\.(\d+))?[.,'-]*$/.exec(token) ?? [];
  if (whole === undefined) return 1;
  const point = decimals === undefined ? 0 : 1 + decimals.length;
  return wholeNumberWords(Number(whole.replaceAll(',', ''))) + point;
}

function wholeNumberWords(value: number): number {
  if (value <= 20) return 1;
  if (value < 100) return value % 10 === 0 ? 1 : 2;
  if (value < 1000) return 2 + rest(value % 100);
  if (value < 1_000_000) {
    return wholeNumberWords(Math.floor(value / 1000)) + 1 + rest(value % 1000);
  }
  return String(value).length;
}

/** "and" is said before what is left below a hundred. */
function rest(value: number): number {
  if (value === 0) return 0;
  return wholeNumberWords(value) + (value < 100 ? 1 : 0);
}

/**
 * How fast somebody speaks, in whole words a minute, by the captions of what was said: words over the time of their cues,
 * pauses left out. Null where they say too little.
 */
export function wordsPerMinute(lines: readonly SpokenLine[]): number | null {
  let words = 0;
  let ms = 0;
  for (const [index, { startMs, endMs, text }] of lines.entries()) {
    if (startMs === null || endMs === null) continue;
    const next = lines[index + 1]?.startMs ?? null;
    // Where captions overlap, or stand until the next, the next one's beginning ends the words.
    const until = next !== null && next > startMs && next - endMs < PAUSE_MS ? next : endMs;
    words += wordsIn(text);
    ms += until - startMs;
  }
  return words < LEAST_WORDS || ms <= 0 ? null : Math.round((words * 60_000) / ms);
}

/** Seconds it takes to say so many words. `secondsToSay(300, 150)` → 120 */
export function secondsToSay(words: number, perMinute: number): number {
  return (words * 60) / perMinute;
}
