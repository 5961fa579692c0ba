/**
 * What may be left out of a description that is too long, in the order in which it is missed least: first what helps,
 * last what is the promise. The numbers themselves, their notes, allergens, cautions, disclosure and corrections are
 * none of it.
 */
export const DROPPABLE = [
  'swaps',
  'oven',
  'per100g',
  'links',
  'method',
  'sources',
  'chapters',
  'hook',
  'ingredients',
  'portions',
] as const;
export type Droppable = (typeof DROPPABLE)[number];

/** A part that may go, with what that comes to in code points. */
export interface Drop {
  readonly part: Droppable;
  /** How much shorter the text is without this alone. */
  readonly saves: number;
  /** How long it is without this and all before it. */
  readonly left: number;
  /** It must go, with those before it, for the text to fit. */
  readonly needed: boolean;
}

/**
 * What to leave out of a text that is too long, first what is missed least; nothing where it fits.
 * @param lengthWithout the length of the text without some parts, made by making it without them
 * @param limit in code points, as the lengths are
 */
export function whatToDrop(
  lengthWithout: (parts: readonly Droppable[]) => number,
  limit: number,
): readonly Drop[] {
  const all = lengthWithout([]);
  if (all <= limit) return [];
  const gone: Droppable[] = [];
  let length = all;
  return DROPPABLE.flatMap((part): Drop[] => {
    const saves = all - lengthWithout([part]);
    if (saves <= 0) return [];
    const needed = length > limit;
    gone.push(part);
    length = lengthWithout(gone);
    return [{ part, saves, left: length, needed }];
  });
}
