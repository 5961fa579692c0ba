import type { Portion } from '#lib/episode/recipe-schema';
import { capitalised } from '#lib/publish/description/numbers-line';

/** A name that says no more than into how many parts the dish is cut. */
const ONLY_COUNTED = /^one of (\d+)$/i;

/**
 * What a portion is called where its numbers are published: its own name, or which part of the dish it is.
 * @example portionTitle({ kind: 'count', name: 'one of 5', of: 5, … }) // '1 of 5 portions'
 * @example portionTitle({ kind: 'count', name: 'a bowl', of: 4, … }) // 'A bowl'
 */
export function portionTitle(portion: Portion): string {
  const counted = ONLY_COUNTED.exec(portion.name.trim());
  if (portion.kind !== 'count' || Number(counted?.[1]) !== portion.of)
    return capitalised(portion.name);
  return portion.of === 1 ? 'The only portion' : `1 of ${portion.of} portions`;
}
