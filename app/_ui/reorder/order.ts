/**
 * A list with one of its members at another place. The place counts in the list without it:
 * `movedTo(['a', 'b', 'c'], 'a', 2)` → `['b', 'c', 'a']`. One that is not in it changes nothing.
 */
export function movedTo(ids: readonly string[], id: string, place: number): readonly string[] {
  if (!ids.includes(id)) return ids;
  const others = ids.filter((each) => each !== id);
  const at = Math.max(0, Math.min(place, others.length));
  return [...others.slice(0, at), id, ...others.slice(at)];
}

/** Top and bottom of a member as it stands on the screen. */
export interface Extent {
  readonly id: string;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The place, among the others, at which a pointer lets go: before the first member whose middle is below it.
 * `placeUnder([{ id: 'a', top: 0, bottom: 10 }, { id: 'b', top: 10, bottom: 20 }], 'b', 2)` → `0`.
 */
export function placeUnder(extents: readonly Extent[], id: string, y: number): number {
  const others = extents.filter((each) => each.id !== id);
  const below = others.findIndex(({ top, bottom }) => y < (top + bottom) / 2);
  return below < 0 ? others.length : below;
}

/** Where the line of a drop is drawn: the top of the member before which it lands, or the end. */
export function dropY(extents: readonly Extent[], id: string, place: number): number {
  const others = extents.filter((each) => each.id !== id);
  return others[place]?.top ?? others.at(-1)?.bottom ?? extents[0]?.top ?? 0;
}
