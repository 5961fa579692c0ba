import { ENGLISH } from '#lib/claims/english/english';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { fold } from '#lib/units/plain-words';

/**
 * Why a count of pieces can't be held against an ingredient: what is counted is a vessel that the ingredient does not
 * name, so that nobody knows how much it holds. Null where it can.
 * @example pieceCause('a scoop of beef', { text: '900 g ground beef', measureName: null }) // 'nobody knows how much …'
 */
export function pieceCause(
  words: string,
  { text, measureName }: Pick<RecipeLine, 'text' | 'measureName'>,
): string | null {
  const [said] = vesselsIn(words);
  if (!said) return null;
  const own = vesselsIn(`${text} ${measureName ?? ''}`);
  if (own.some(({ kind }) => kind === said.kind)) return null;
  return `nobody knows how much one ${said.word} holds of ${text}`;
}

/** The vessels that words name, and which are called alike. */
function vesselsIn(words: string): { readonly word: string; readonly kind: number }[] {
  return (fold(words).match(/\p{L}+/gu) ?? []).flatMap((said) => {
    const kind = ENGLISH.amounts.vessels.get(said);
    return kind === undefined ? [] : [{ word: ENGLISH.singular(said), kind }];
  });
}
