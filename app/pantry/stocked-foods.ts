import 'server-only';
import type { StockedFood } from '#lib/shopping/watched-lots';
import type { FoodInUse } from '#lib/store/read-foods-in-use';
import { readFoodsById } from '#lib/store/read-foods';

/** Foods with their lots and what their composition says of them. */
export async function stockedFoods(foods: readonly FoodInUse[]): Promise<readonly StockedFood[]> {
  const byId = new Map(
    (await readFoodsById(foods.map(({ id }) => id))).map((food) => [food.id, food]),
  );
  return foods.flatMap(({ id, lots, said }) => {
    const food = byId.get(id);
    return food ? [{ food, lots, opened: said?.opened ?? null }] : [];
  });
}
