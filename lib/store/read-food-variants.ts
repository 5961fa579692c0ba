import 'server-only';
import type { Food } from '#lib/foods/food';
import { isVariant, variantKey, type NamedFood } from '#lib/foods/food-variants';
import { readFoodsById } from '#lib/store/read-foods';
import { findHits } from '#lib/store/reference-search';

/** Among so many foods that are called alike the variants of one are looked for. */
const SEARCHED = 24;

/** The foods of the reference table that are the same as one but for how fat they are, by its id. */
export async function readFoodVariants(
  foods: readonly NamedFood[],
): Promise<ReadonlyMap<string, readonly Food[]>> {
  const found = await Promise.all(
    foods.map(async (food): Promise<readonly [string, readonly Food[]]> => {
      const key = variantKey(food);
      const asked = { take: SEARCHED, referenceOnly: true, products: false, whole: true };
      const hits = key === '' ? [] : await findHits(key.replaceAll(',', ' '), asked);
      const ids = hits.flatMap(({ entry: { id, name, section } }) =>
        isVariant(food, { id, name, section }) ? [id] : [],
      );
      return [food.id, ids.length === 0 ? [] : await readFoodsById(ids)];
    }),
  );
  return new Map(found);
}
