import { ENGLISH } from '#lib/claims/english/english';
import type { Statement } from '#lib/claims/statement';
import { fold } from '#lib/units/plain-words';

/** Words before a statement, and behind it, that may say what it is about; farther off they rarely do. */
const BEFORE = 10;
export const BEHIND = 6;

/** The rest of the sentence before a statement and behind it, itself between them. */
export function sentenceAround(
  text: string,
  { start, end }: Pick<Statement, 'start' | 'end'>,
): { readonly before: string; readonly words: string; readonly behind: string } {
  return {
    before: lastSentence(text.slice(Math.max(0, start - 160), start)),
    words: text.slice(start, end),
    behind: firstSentence(text.slice(end, end + 120)),
  };
}

/** Stems of the words around a statement in its sentence, itself included. */
function stemsAround(
  text: string,
  statement: Pick<Statement, 'start' | 'end'>,
): ReadonlySet<string> {
  const { before, words, behind } = sentenceAround(text, statement);
  return new Set([
    ...stems(before).slice(-BEFORE),
    ...stems(words),
    ...stems(behind).slice(0, BEHIND),
  ]);
}

/** A sentence with the stems of its words around a statement. */
export interface Around {
  readonly before: string;
  readonly behind: string;
  readonly stems: ReadonlySet<string>;
}

const kept = new WeakMap<object, Around & Pick<Statement, 'start' | 'end'>>();

/** What stands around a statement, looked up once for all numbers that are tried in its place. */
export function wordsAround(
  place: { readonly text: string },
  { start, end }: Pick<Statement, 'start' | 'end'>,
): Around {
  const known = kept.get(place);
  if (known?.start === start && known.end === end) return known;
  const { before, behind } = sentenceAround(place.text, { start, end });
  const made = { start, end, before, behind, stems: stemsAround(place.text, { start, end }) };
  kept.set(place, made);
  return made;
}

/** The words of a text by their stems, small words left out: `stems('Baking the pies')` → ['bak', 'pi']. */
export function stems(text: string): string[] {
  const words = fold(text).match(/[\p{L}]+/gu);
  return (words ?? [])
    .filter((word) => word.length > 1 && !ENGLISH.judging.small.has(word))
    .map(stemOf);
}

/** A word without what grammar adds to it, cut alike for 'bake', 'baked', 'baking'. */
function stemOf(word: string): string {
  const { endings, doubled } = ENGLISH.judging;
  const one = ENGLISH.singular(word);
  const cut = one.replace(endings, '');
  if (cut.length < 3) return one;
  return cut !== one && doubled.test(cut) ? cut.slice(0, -1) : cut;
}

/** What stands behind the last end of a sentence. */
export const lastSentence = (text: string) => text.split(/[.!?;](?:\s|$)|\n\s*\n/).at(-1) ?? '';
const firstSentence = (text: string) => text.split(/[.!?;](?:\s|$)|\n\s*\n/)[0] ?? '';
