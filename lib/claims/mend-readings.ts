import { fold } from '#lib/units/plain-words';
import { mendPlace, type Mend, type MendKey, type ReadingMend } from '#lib/episode/edit-schema';
import type { PlacedText } from './places/placed-text';

/** Words on each side by which a reading is found again. */
const NEIGHBOURS = 4;
/** As long as the file keeps them. */
const MOST_WORDS = 400;
const MOST_NEIGHBOURS = 200;

/** A text as far as readings in it are found again. */
export interface MendedText {
  readonly said: Pick<PlacedText['said'], 'id' | 'kind'>;
  readonly text: string;
}

/** Texts so short that others may have the same words beside a number: a reading is of one of them alone. */
const SHORT: ReadonlySet<MendedText['said']['kind']> = new Set([
  'title',
  'thumbnail',
  'card',
  'talkingPoint',
]);

/** Readings that the person put right, to be looked up by where they hold. */
export type Mends = ReadonlyMap<string, ReadingMend>;

/**
 * What the words of a statement and those beside them are called in a mend: in lower case, with single blanks, without
 * marks at the ends of words; of a short text with the text itself.
 * @example mendKey(captions, 15, 28) // of 'Right, it has  640\ncalories. So': words '640 calories', before 'right it has', after 'so'
 */
function mendKey({ said, text }: MendedText, start: number, end: number): MendKey {
  const before = foldedWords(text.slice(Math.max(0, start - REACH), start));
  const after = foldedWords(text.slice(end, end + REACH));
  return {
    textId: SHORT.has(said.kind) ? said.id : null,
    words: kept(foldedWords(text.slice(start, end)), MOST_WORDS),
    before: kept(before.slice(-NEIGHBOURS), MOST_NEIGHBOURS),
    after: kept(after.slice(0, NEIGHBOURS), MOST_NEIGHBOURS),
  };
}

/** Far enough for four words of any language and the line ends between them, and no farther than that. */
const REACH = 400;

/** Words without what stands at their ends; a percent sign and the like stay. */
function foldedWords(text: string): string[] {
  return text.split(/\s+/).flatMap((word) => {
    const bare = fold(word).replace(/^[^\p{L}\p{N}$€£¥]+|[^\p{L}\p{N}%°½¼¾⅓⅔]+$/gu, '');
    return bare === '' ? [] : [bare];
  });
}

const kept = (words: readonly string[], most: number) => words.join(' ').slice(0, most).trimEnd();

/**
 * The row to keep so that a reading stays as the person put it: found in the same text with other times, and wherever
 * its words stand between the same four on each side.
 * @example mendFor(id, captions, 15, 28, { kind: 'nothing' })
 */
export function mendFor(
  id: string,
  text: MendedText,
  start: number,
  end: number,
  mend: Mend,
): ReadingMend {
  return { id, ...mendKey(text, start, end), mend };
}

/** Looks all mends up by their words; of two for the same place the later counts. */
export function mendsByWords(mends: readonly ReadingMend[]): Mends {
  return new Map(mends.map((mend) => [mendPlace(mend), mend]));
}

/** The mend that holds for a stretch of a text; null where none does. */
export function mendAt(
  mends: Mends,
  text: MendedText,
  start: number,
  end: number,
): ReadingMend | null {
  if (mends.size === 0) return null;
  return mends.get(mendPlace(mendKey(text, start, end))) ?? null;
}
