import type { Composition } from '#lib/figures/compiled/composition';
import type { Product } from '#lib/figures/compiled/summand';

/** What ids of food values begin with; see `statedNutrient`. */
const FOOD = 'food:';

/**
 * By nutrient, the sorted ids of all sources in a sum: what `sourceIds` gives of its collected terms.
 * @param length how many nutrients the panel has
 */
export function sourceLists(
  entries: readonly Product[],
  length: number,
): readonly (readonly string[])[] {
  const used = entries
    .filter(({ factor }) => !factor.none)
    .map(({ of, factor }) => ({ of, ids: factor.ids }));
  const ids = [...new Set(used.flatMap((each) => each.ids))].sort();
  const rank = new Map(ids.map((id, place) => [id, place]));
  const ranked = used.map((each) => ({
    of: each.of,
    places: each.ids.map((id) => rank.get(id) ?? 0),
  }));
  const foods = [...new Set(used.map(({ of }) => of))].sort(byId);
  // Ids of food values stand together in the sorted list, as long as nothing but their end holds a colon.
  const inOrder = !foods.some(({ versionId }) => versionId.includes(':'));
  const before = ids.filter((id) => id < FOOD).length;
  return Array.from({ length }, (_, nutrient) => {
    const taken = new Uint8Array(ids.length);
    for (const { of, places } of ranked) {
      if (of.present[nutrient]) for (const place of places) taken[place] = 1;
    }
    const list: string[] = [];
    for (let place = 0; place < before; place += 1) if (taken[place]) list.push(ids[place] ?? '');
    for (const food of foods) list.push(...(food.ids[nutrient] ?? []));
    for (let place = before; place < ids.length; place += 1) {
      if (taken[place]) list.push(ids[place] ?? '');
    }
    return inOrder ? list : list.sort();
  });
}

function byId(a: Composition, b: Composition): number {
  return `${a.versionId}:` < `${b.versionId}:` ? -1 : 1;
}
