import 'server-only';
import { Prisma } from '#db/generated/sqlite/client';
import { database } from '#lib/store/client';
import { readJournalText } from '#lib/store/journal';
import type { JournalLine } from '#lib/store/read-changes';
import type { EntityName } from '#lib/store/rows';
import { tableOf, withoutLong } from '#lib/store/table';

/** One act of the journal with all its lines, in the order written. */
export interface Act {
  readonly groupId: string;
  readonly label: string;
  readonly actor: string;
  readonly at: Date;
  /** Number of its last line: where the page after it begins. */
  readonly seq: number;
  readonly lines: readonly JournalLine[];
}

/** What things are called and where they belong, by id; removed ones too. */
export type Names = Readonly<Record<string, string>>;

export interface EpisodeChanges {
  readonly acts: readonly Act[];
  /** The `before` of the next page; null on the last. */
  readonly next: number | null;
  readonly names: Names;
}

/** Which table hangs on which by which column; the first is the episode itself. */
const BRANCHES: readonly (readonly [EntityName, string, EntityName])[] = [
  ['Segment', 'episodeId', 'Episode'],
  ['Target', 'episodeId', 'Episode'],
  ['StepLink', 'episodeId', 'Episode'],
  ['WebLink', 'episodeId', 'Episode'],
  ['DayEpisode', 'episodeId', 'Episode'],
  ['EditText', 'episodeId', 'Episode'],
  ['ReadingMend', 'episodeId', 'Episode'],
  ['NamedFood', 'episodeId', 'Episode'],
  ['Variant', 'segmentId', 'Segment'],
  ['SwapStep', 'variantId', 'Variant'],
  ['Reply', 'episodeId', 'Episode'],
  ['Piece', 'episodeId', 'Episode'],
  ['PieceSegment', 'pieceId', 'Piece'],
  ['NumbersLock', 'episodeId', 'Episode'],
  ['Tick', 'episodeId', 'Episode'],
  ['Published', 'lockId', 'NumbersLock'],
  ['Correction', 'newLockId', 'NumbersLock'],
  ['RecipeLine', 'recipeId', 'Recipe'],
  ['Portion', 'recipeId', 'Recipe'],
  ['Weighing', 'recipeId', 'Recipe'],
  ['WeighingShare', 'weighingId', 'Weighing'],
  ['YieldObservation', 'lineId', 'RecipeLine'],
  ['TalkingPoint', 'segmentId', 'Segment'],
  ['Step', 'segmentId', 'Segment'],
  ['Shot', 'segmentId', 'Segment'],
  ['Perishable', 'segmentId', 'Segment'],
  ['PerishableSpan', 'perishableId', 'Perishable'],
  ['DaySegment', 'segmentId', 'Segment'],
  ['Appointment', 'dayId', 'FilmingDay'],
  ['Pin', 'dayId', 'FilmingDay'],
  ['DayEvent', 'dayId', 'FilmingDay'],
];
/** Parents found by an id that another row names. */
const NAMED: Partial<Record<EntityName, readonly [EntityName, string]>> = {
  Segment: ['Recipe', 'recipeId'],
  DayEpisode: ['FilmingDay', 'dayId'],
};

type Rows = Map<EntityName, Map<string, Readonly<Record<string, unknown>>>>;

/** Every row of an episode, removed ones included: what its journal speaks of. */
async function rowsOf(episodeId: string): Promise<Rows> {
  const db = database();
  const rows: Rows = new Map();
  const keep = (entity: EntityName, found: readonly Readonly<Record<string, unknown>>[]) => {
    const known = rows.get(entity) ?? new Map<string, Readonly<Record<string, unknown>>>();
    rows.set(entity, known);
    for (const row of found) known.set(String(row.id), row);
  };
  const ask = async (entity: EntityName, column: string, ids: readonly string[]) => {
    if (ids.length === 0) return;
    const where = { [column]: { in: [...ids] } };
    keep(entity, await tableOf(db, entity).findMany({ where, ...withoutLong(entity) }));
    const named = NAMED[entity];
    if (!named) return;
    const [parent, by] = named;
    const parents = [...(rows.get(entity)?.values() ?? [])].flatMap((row) => row[by] ?? []);
    keep(parent, await tableOf(db, parent).findMany({ where: { id: { in: parents } } }));
  };
  await ask('Episode', 'id', [episodeId]);
  for (const [entity, column, parent] of BRANCHES) {
    await ask(entity, column, [...(rows.get(parent)?.keys() ?? [])]);
  }
  const all = [...rows.values()].flatMap((some) => [...some.keys()]);
  keep('Draft', await tableOf(db, 'Draft').findMany({ where: { entityId: { in: all } } }));
  return rows;
}

/** Acts on one page. */
const PAGE = 20;

/**
 * The journal of an episode and all its rows, the newest act first, with what is needed to say it in words.
 * @param before acts whose last line has a smaller number; all without it
 */
export async function readEpisodeChanges(
  episodeId: string,
  { before, take = PAGE }: { readonly before?: number; readonly take?: number } = {},
): Promise<EpisodeChanges> {
  const rows = await rowsOf(episodeId);
  const found = await groupsOf(rows, before, take + 1);
  const groups = found.slice(0, take);
  const acts = await Promise.all(groups.map(({ groupId }) => actOf(groupId)));
  const last = groups.at(-1);
  return {
    acts,
    next: found.length > groups.length && last ? last.seq : null,
    names: await namesOf(rows, acts),
  };
}

/** Groups that touch one of the rows, the last written first. */
async function groupsOf(rows: Rows, before: number | undefined, take: number) {
  const touching = [...rows].map(
    ([entity, some]) =>
      Prisma.sql`("entity" = ${entity} AND "entityId" IN (${Prisma.join([...some.keys(), ''])}))`,
  );
  const having = before === undefined ? Prisma.empty : Prisma.sql`HAVING MAX("seq") < ${before}`;
  const found = await database().$queryRaw<{ groupId: string; seq: number | bigint }[]>`
    SELECT "groupId", MAX("seq") AS "seq" FROM "Change"
    WHERE ${Prisma.join(touching, ' OR ')}
    GROUP BY "groupId" ${having} ORDER BY 2 DESC LIMIT ${take}`;
  return found.map(({ groupId, seq }) => ({ groupId, seq: Number(seq) }));
}

/** An act of the journal with all its lines. */
export async function actOf(groupId: string): Promise<Act> {
  const changes = await database().change.findMany({
    where: { groupId },
    orderBy: { seq: 'asc' },
  });
  const [first] = changes;
  if (!first) throw new Error(`The journal has no act ${groupId}`);
  const lines = changes.map((line) => ({
    ...line,
    before: readJournalText(line.before),
    after: readJournalText(line.after),
  }));
  const { label, actor, at } = first;
  return { groupId, label, actor, at, seq: changes.at(-1)?.seq ?? first.seq, lines };
}

/** The column that a row is called by. */
export const NAME_COLUMNS: Partial<Record<EntityName, string>> = {
  Episode: 'title',
  Segment: 'title',
  RecipeLine: 'text',
  Portion: 'name',
  Step: 'title',
  Shot: 'title',
  Perishable: 'name',
  Variant: 'name',
  Piece: 'title',
  FilmingDay: 'date',
};

/** Names by id. A recipe is called as the segment that has it. */
async function namesOf(rows: Rows, acts: readonly Act[]): Promise<Names> {
  const names: Record<string, string> = {};
  for (const [entity, column] of Object.entries(NAME_COLUMNS)) {
    for (const [id, row] of rows.get(entity as EntityName) ?? []) names[id] = String(row[column]);
  }
  for (const [, { recipeId, title }] of rows.get('Segment') ?? []) {
    if (typeof recipeId === 'string') names[recipeId] = String(title);
  }
  const db = database();
  const named = new Set<string>();
  for (const { before, after } of acts.flatMap(({ lines }) => lines)) {
    for (const row of [before, after]) {
      for (const column of ['foodId', 'orFoodId', 'madeFromId']) {
        if (typeof row?.[column] === 'string') named.add(row[column]);
      }
    }
  }
  const id = { in: [...named] };
  const foods = await db.food.findMany({ where: { id }, select: { id: true, name: true } });
  const dishes = await db.recipe.findMany({ where: { id }, select: { id: true, title: true } });
  const ovens = await db.oven.findMany({ select: { id: true, name: true } });
  const scales = await db.scale.findMany({ select: { id: true, name: true } });
  for (const { id, name } of [...foods, ...ovens, ...scales]) names[id] ??= name;
  // Dishes of other episodes; those of this one have their names already.
  for (const { id, title } of dishes) names[id] ??= title;
  return names;
}
