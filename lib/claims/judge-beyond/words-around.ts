import type { Statement } from '#lib/claims/statement';
import { fold, singular } from '#lib/units/plain-words';

/** Words before a statement, and behind it, that may say what it is about; farther off they rarely do. */
const BEFORE = 10;
const BEHIND = 6;
/** Words that say nothing of what is done or to what. */
const SMALL = new Set(
  'a an and are at be but by for from get go goes got have i if in into is it its just like my no not of on one or our so that the them then they this to up was we with you your min mins minute minutes hour hours degrees degree about around until till out off over'.split(
    ' ',
  ),
);

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
export function stemsAround(
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
  return (words ?? []).filter((word) => word.length > 1 && !SMALL.has(word)).map(stemOf);
}

/** A word without what grammar adds to it, cut alike for 'bake', 'baked', 'baking'. */
function stemOf(word: string): string {
  const one = singular(word);
  const cut = one.replace(/(?:ing|ed|es|e)$/, '');
  if (cut.length < 3) return one;
  // 'chopping', 'stirred': the doubled letter is no part of the word.
  return cut !== one && /([bdgmnprt])\1$/.test(cut) ? cut.slice(0, -1) : cut;
}

const lastSentence = (text: string) => text.split(/[.!?;](?:\s|$)|\n\s*\n/).at(-1) ?? '';
const firstSentence = (text: string) => text.split(/[.!?;](?:\s|$)|\n\s*\n/)[0] ?? '';
