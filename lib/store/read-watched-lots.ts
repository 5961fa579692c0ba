import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readPantryFoods, type FoodInUse } from '#lib/store/read-foods-in-use';

/** Foods that are looked through for dates at most. */
const MOST = 300;

/**
 * Foods with a lot that has something left and may end by a day: by its use-by, since it was opened, or since
 * nothing is known but when it was bought. In the order of their first use-by; those without one come last.
 * @param until the last use-by that is looked at
 */
export async function readFoodsToWatch(
  until: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly FoodInUse[]> {
  const rows = await database().$queryRaw<{ foodId: string }[]>`
    SELECT l."foodId" FROM "StockLot" l
    WHERE l."creatorId" = ${creatorId} AND l."deletedAt" IS NULL
      AND (l."useBy" IS NULL OR l."useBy" <= ${until} OR l."openedOn" IS NOT NULL)
      AND (SELECT SUM(m."deltaMg") FROM "StockMove" m
        WHERE m."lotId" = l."id" AND m."deletedAt" IS NULL) > 0
    GROUP BY l."foodId"
    ORDER BY COALESCE(MIN(l."useBy"), '9999'), l."foodId"
    LIMIT ${MOST}`;
  return readPantryFoods(
    rows.map(({ foodId }) => foodId),
    creatorId,
  );
}
