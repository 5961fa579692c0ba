import 'server-only';
import { Prisma } from '#db/generated/sqlite/client';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import {
  actOf,
  NAME_COLUMNS,
  type Act,
  type EpisodeChanges,
  type Names,
} from '#lib/store/read-episode-changes';
import type { EntityName } from '#lib/store/rows';
import { tableOf } from '#lib/store/table';

/** Acts on one page. */
const PAGE = 20;

/** Tables whose rows others name, beside those of an episode, and the column that they are called by. */
const CALLED: Partial<Record<EntityName, string>> = {
  ...NAME_COLUMNS,
  Food: 'name',
  Kitchen: 'name',
  Oven: 'name',
  Scale: 'name',
  Shop: 'name',
};

/**
 * The whole journal of a creator, the newest act first, with what is needed to say it in words: pantry and
 * kitchen as well as every episode.
 * @param before acts whose last line has a smaller number; all without it
 */
export async function readAllChanges(
  { before, take = PAGE }: { readonly before?: number; readonly take?: number } = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<EpisodeChanges> {
  const having = before === undefined ? Prisma.empty : Prisma.sql`HAVING MAX("seq") < ${before}`;
  const found = await database().$queryRaw<{ groupId: string; seq: number | bigint }[]>`
    SELECT "groupId", MAX("seq") AS "seq" FROM "Change" WHERE "creatorId" = ${creatorId}
    GROUP BY "groupId" ${having} ORDER BY 2 DESC LIMIT ${take + 1}`;
  const groups = found.slice(0, take);
  const acts = await Promise.all(groups.map(({ groupId }) => actOf(groupId)));
  const last = groups.at(-1);
  return {
    acts,
    next: found.length > groups.length && last ? Number(last.seq) : null,
    names: await namesFor(acts),
  };
}

/**
 * Names of whatever the acts' rows name by id. A recipe is called as the segment that has it, a reading of a
 * label as its food.
 */
async function namesFor(acts: readonly Act[]): Promise<Names> {
  const ids = new Set<string>();
  for (const { entityId, before, after } of acts.flatMap(({ lines }) => lines)) {
    ids.add(entityId);
    for (const [column, value] of [before, after].flatMap((row) => Object.entries(row ?? {}))) {
      if (column.endsWith('Id') && typeof value === 'string') ids.add(value);
    }
  }
  const asked = [...ids].slice(0, MOST_NAMES);
  const names: Record<string, string> = {};
  for (const [entity, column] of Object.entries(CALLED)) {
    const table = tableOf(database(), entity as EntityName);
    for (const row of await table.findMany({ where: { id: { in: asked } } })) {
      names[String(row.id)] = String(row[column]);
    }
  }
  const segments = await database().segment.findMany({
    where: { recipeId: { in: asked } },
    select: { recipeId: true, title: true },
  });
  for (const { recipeId, title } of segments) if (recipeId !== null) names[recipeId] = title;
  const readings = await database().foodVersion.findMany({
    where: { id: { in: asked } },
    select: { id: true, food: { select: { name: true } } },
  });
  for (const { id, food } of readings) names[id] = food.name;
  return names;
}

/** More ids than a page of acts names; a list in a query has its limit. */
const MOST_NAMES = 20_000;
