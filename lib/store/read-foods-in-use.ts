import 'server-only';
import { Prisma } from '#db/generated/sqlite/client';
import { sectionSchema, type Section } from '#lib/foods/food';
import {
  packSchema,
  stockLotSchema,
  type Pack,
  type StockLot,
  pantryFoodSchema,
  type PantryFood,
} from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { lotFrom, packFrom, pantryFrom } from '#lib/store/from-rows';
import { ALIVE, LOT_INCLUDE, PACK_INCLUDE } from '#lib/store/load';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';

/** A food of the pantry with all that is known of it at home and in shops. */
export interface FoodInUse {
  readonly id: string;
  readonly name: string;
  readonly section: Section;
  /** False for a food of a published table. */
  readonly own: boolean;
  readonly lots: readonly StockLot[];
  readonly packs: readonly Pack[];
  /** What was said of it at home; null where nobody said anything. */
  readonly said: PantryFood | null;
  /** The revision of each lot by its id, for forms. */
  readonly revs: Readonly<Record<string, number>>;
}

/**
 * The foods in use, by name: the creator's own that are part of no other, and those of published tables that an
 * ingredient, a lot, a pack or an answer about stock names.
 * @param of.words kept are foods that have all of them in their name
 */
export async function readFoodsInUse(
  of: PageOf & { readonly words?: string } = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Page<FoodInUse>> {
  const last = of.after
    ? await database().food.findUnique({ where: { id: of.after }, select: { nameFolded: true } })
    : null;
  const found = await database().$queryRaw<{ id: string }[]>`
    SELECT f."id" FROM "Food" f
    WHERE f."id" IN (${usedIds(creatorId)})
      AND f."deletedAt" IS NULL AND f."mergedIntoId" IS NULL
      ${named(of.words ?? '')}
      ${last ? Prisma.sql`AND (f."nameFolded", f."id") > (${last.nameFolded}, ${of.after ?? ''})` : Prisma.empty}
    ORDER BY f."nameFolded", f."id" LIMIT ${wanted(of)}`;
  const page = pageOf(found, of);
  const ids = page.rows.map(({ id }) => id);
  return { ...page, rows: await readPantryFoods(ids, creatorId) };
}

/** Foods that the creator has or uses. Asked from the small side: published tables may hold millions. */
function usedIds(creatorId: string): Prisma.Sql {
  const named = (table: 'RecipeLine' | 'StockLot' | 'Pack' | 'PantryFood', column = 'foodId') =>
    Prisma.sql`SELECT ${Prisma.raw(`"${column}"`)} FROM ${Prisma.raw(`"${table}"`)}
      WHERE "creatorId" = ${creatorId} AND "deletedAt" IS NULL AND ${Prisma.raw(`"${column}"`)} IS NOT NULL`;
  return Prisma.sql`
    SELECT "id" FROM "Food" WHERE "creatorId" = ${creatorId} AND "deletedAt" IS NULL
    UNION ${named('RecipeLine')} UNION ${named('RecipeLine', 'orFoodId')}
    UNION ${named('StockLot')} UNION ${named('Pack')} UNION ${named('PantryFood')}`;
}

/** That a name has each of the words somewhere. */
function named(words: string): Prisma.Sql {
  const each = folded(words)
    .split(/\s+/)
    .filter((word) => word !== '');
  const parts = each.map((word) => {
    const pattern = `%${word.replace(/[\\%_]/g, (mark) => `\\${mark}`)}%`;
    return Prisma.sql`AND f."nameFolded" LIKE ${pattern} ESCAPE '\\'`;
  });
  return parts.length === 0 ? Prisma.empty : Prisma.join(parts, ' ');
}

/** Foods by id with their lots, packs and answers, in the order asked; those that are not there are left out. */
export async function readPantryFoods(
  ids: readonly string[],
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly FoodInUse[]> {
  const own = { ...ALIVE, creatorId };
  const foods = await database().food.findMany({
    where: { id: { in: [...ids] }, ...ALIVE },
    select: {
      id: true,
      name: true,
      section: true,
      creatorId: true,
      lots: { where: own, orderBy: { id: 'asc' }, include: LOT_INCLUDE },
      packs: { where: own, orderBy: { id: 'asc' }, include: PACK_INCLUDE },
      pantry: { where: own, orderBy: { id: 'desc' }, take: 1 },
    },
  });
  const byId = new Map(foods.map((food) => [food.id, food]));
  return ids.flatMap((id): FoodInUse[] => {
    const food = byId.get(id);
    if (!food) return [];
    const [said] = food.pantry;
    return [
      {
        id,
        name: food.name,
        section: sectionSchema.parse(food.section),
        own: food.creatorId === creatorId,
        lots: food.lots.map((lot) => stockLotSchema.parse(lotFrom(lot))),
        packs: food.packs.map((pack) => packSchema.parse(packFrom(pack))),
        said: said ? pantryFoodSchema.parse(pantryFrom(said)) : null,
        revs: Object.fromEntries(food.lots.map((lot) => [lot.id, lot.rev])),
      },
    ];
  });
}
