import type { Judged } from '#lib/claims/judged';
import { ENGLISH } from '#lib/claims/english/english';
import { oneLine, sentenceAround } from '#lib/claims/sentence-around';
import { secondsToSay, wordsIn } from '#lib/cut/speaking-rate';

/** Words with a place in the edit. */
export interface Placed {
  readonly startMs: number;
  readonly endMs: number;
}

/** What can be done in the edit about words that are off. */
export interface WaysToMend {
  /** A card over the picture, from the words until it can be read. */
  readonly card: (Placed & { readonly words: string }) | null;
  /** What to take out: the lines in which the words stand. */
  readonly cut: Placed | null;
  /** The sentence with the right words, and how long both take to say. */
  readonly sentence: {
    readonly was: string;
    readonly words: string;
    readonly wasS: number;
    readonly seconds: number;
  } | null;
}

/**
 * How fast a card is read, and the least that it stands: 160 words a minute as captions are made for (BBC Subtitle
 * Guidelines); three seconds (common practice, no source).
 */
const READ_PER_MINUTE = 160;
const LEAST_CARD_MS = 3000;

/**
 * Ways to mend words that are off: a card, a cut, a sentence to say again. None where nothing better can be said, and
 * no card or cut where the words have no time.
 * @param text the text in which the statement stands
 * @param perMinute words a minute at which the person speaks
 * @example waysToMend(off640, captions.text, 150).card?.words // 'Correction: about 610 calories, not “640 calories”'
 */
export function waysToMend(
  { verdict, sayInstead, statement, place }: Judged,
  text: string,
  perMinute: number,
): WaysToMend {
  if (verdict !== 'off') return { card: null, cut: null, sentence: null };
  const { startMs, endMs } = place;
  const timed = startMs === null ? null : { startMs, endMs: endMs ?? startMs };
  const said = oneLine(statement.words);
  return {
    card:
      timed && sayInstead !== null
        ? cardOf(`Correction: ${sayInstead}, not “${said}”`, timed)
        : null,
    cut: timed,
    // 'it's contains walnuts': what a dish contains stands in a sentence of its own.
    sentence:
      sayInstead === null || statement.kind === 'freeFrom'
        ? null
        : sentenceOf(text, statement, sayInstead, perMinute),
  };
}

function cardOf(words: string, { startMs, endMs }: Placed) {
  const readMs = secondsToSay(wordsIn(words), READ_PER_MINUTE) * 1000;
  const standsMs = Math.max(LEAST_CARD_MS, Math.ceil(readMs / 100) * 100, endMs - startMs);
  return { words, startMs, endMs: startMs + standsMs };
}

function sentenceOf(
  text: string,
  statement: Judged['statement'],
  sayInstead: string,
  perMinute: number,
): WaysToMend['sentence'] {
  const { start, end } = statement;
  const around = sentenceAround(text, start, end);
  const share = sharesOf(statement, sayInstead);
  const words = oneLine(
    `${share(text.slice(around.start, start))}${sayInstead}${share(text.slice(end, around.end))}`,
  );
  const tenths = (spoken: string) => Math.round(secondsToSay(wordsIn(spoken), perMinute) * 10) / 10;
  return { was: around.words, words, wasS: tenths(around.words), seconds: tenths(words) };
}

/**
 * Puts right the share that follows from how many portions there are: a quarter of four is a fifth of five. Of other
 * statements, of shares of something else, and of those that follow from no such number, the words stay.
 */
function sharesOf(statement: Judged['statement'], sayInstead: string): (words: string) => string {
  const right = /^\d+/.exec(sayInstead)?.[0];
  if (statement.kind !== 'portions' || statement.low !== statement.high || !right) {
    return (words) => words;
  }
  const { fractions } = ENGLISH.numbers;
  const named = [...fractions].find(([, of]) => of === Number(right))?.[0];
  return (words) =>
    words.replace(ENGLISH.judging.shareOfIt, (share, word: string) => {
      if (fractions.get(word.toLowerCase()) !== statement.low) return share;
      const put = named ? ENGLISH.judging.aShare(named) : `1/${right}`;
      return /^\p{Lu}/u.test(share) ? `${put.charAt(0).toUpperCase()}${put.slice(1)}` : put;
    });
}
