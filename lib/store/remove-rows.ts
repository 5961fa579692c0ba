import 'server-only';
import { readingId } from '#lib/shoot/day-weighings';
import { database, type Tx } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { byIds } from '#lib/store/load';
import { REFERENCES } from '#lib/store/parents';
import type { EntityName } from '#lib/store/rows';
import { tableOf, withoutLong, type StoredRow } from '#lib/store/table';

/** A row that goes, or that lets go of one that does. */
interface Going {
  readonly entity: EntityName;
  readonly row: StoredRow;
}

/**
 * The edits that take a row out with everything that means nothing without it: a dish with its ingredients,
 * portions, readings, steps, ties, lots, shots, sentences, targets, pins and its place on filming days; a
 * step with its ties, stretches and pins; an ingredient with its readings. A shot of another segment only
 * lets go of its step. As one command it is one act of the journal, and undoing that brings all of it back.
 *
 * Law: `undo` of these edits leaves the episode's file as it was, byte for byte.
 * @param rev the revision at which the row itself was shown
 */
export async function removalEdits(entity: EntityName, id: string, rev: number): Promise<Edit[]> {
  const db = database();
  const own: Edit = { op: 'remove', entity, id, rev };
  const row = await tableOf(db, entity).findUnique({ where: { id } });
  if (row === null || row.deletedAt !== null) return [own];
  const goes = new Map<string, Going>([[id, { entity, row }]]);
  const loose = new Map<string, { going: Going; columns: Set<string> }>();
  let latest: readonly Going[] = [{ entity, row }];
  while (latest.length > 0) {
    const found = await referring(db, latest);
    const next: Going[] = [
      ...(await recipesWith(db, latest)),
      ...(await emptied(db, latest, goes)),
      ...(await takenBy(db, latest)),
    ];
    for (const { going, column, whenGone } of found) {
      if (whenGone === 'goes') next.push(going);
      else {
        const known = loose.get(going.row.id) ?? { going, columns: new Set<string>() };
        loose.set(going.row.id, known);
        known.columns.add(column);
      }
    }
    latest = next.filter(({ row: each }, index) => {
      const first = next.findIndex((other) => other.row.id === each.id) === index;
      return first && !goes.has(each.id);
    });
    for (const going of latest) goes.set(going.row.id, going);
  }
  const letting = [...loose.values()].filter(({ going }) => !goes.has(going.row.id));
  return [
    own,
    ...[...goes.values()]
      .filter((going) => going.row.id !== id)
      .map((going): Edit => {
        return { op: 'remove', entity: going.entity, id: going.row.id, rev: going.row.rev };
      }),
    ...letting.map(({ going, columns }) => {
      const patch = Object.fromEntries([...columns].map((column) => [column, null]));
      const { entity: of, row: at } = going;
      return { op: 'update', entity: of, id: at.id, rev: at.rev, patch } as unknown as Edit;
    }),
  ];
}

/** Living rows that name one of these, each with the column that does. */
export async function referring(tx: Tx, rows: readonly Going[]) {
  const found = [];
  for (const { entity, column, parent, whenGone } of REFERENCES) {
    const ids = rows.filter((going) => going.entity === parent).map(({ row }) => row.id);
    if (ids.length === 0) continue;
    const named = await byIds(ids, (some) =>
      tableOf(tx, entity).findMany({
        where: { [column]: { in: some }, deletedAt: null },
        orderBy: { id: 'asc' },
        ...withoutLong(entity),
      }),
    );
    found.push(...named.map((row) => ({ going: { entity, row }, column, whenGone })));
  }
  return found;
}

/** The recipes that no other segment has. */
async function recipesWith(tx: Tx, rows: readonly Going[]): Promise<Going[]> {
  const found: Going[] = [];
  for (const { entity, row } of rows) {
    if (entity !== 'Segment' || typeof row.recipeId !== 'string') continue;
    const { recipeId } = row;
    const others = await tx.segment.count({
      where: { recipeId, deletedAt: null, id: { not: row.id } },
    });
    const recipe = await tableOf(tx, 'Recipe').findUnique({ where: { id: recipeId } });
    if (others === 0 && recipe?.deletedAt === null) found.push({ entity: 'Recipe', row: recipe });
  }
  return found;
}

/** What readings of a filming day took out of lots that are there: it was not taken after all. */
async function takenBy(tx: Tx, rows: readonly Going[]): Promise<Going[]> {
  const entries = rows.flatMap(({ entity, row }) =>
    entity === 'Weighing' && row.id.startsWith(READING) ? [row.id.slice(READING.length)] : [],
  );
  const moves = await byIds(entries, (some) =>
    tx.stockMove.findMany({
      where: { eventId: { in: some }, deletedAt: null, lot: { deletedAt: null } },
      orderBy: { id: 'asc' },
    }),
  );
  return moves.map((row) => ({ entity: 'StockMove', row: { ...row } }));
}

/** Before an entry's id: the reading that it became. */
const READING = readingId('');

/** The readings all of whose shares go: a reading of nothing is none. */
async function emptied(
  tx: Tx,
  rows: readonly Going[],
  goes: ReadonlyMap<string, Going>,
): Promise<Going[]> {
  const shares = rows.filter(({ entity }) => entity === 'WeighingShare');
  const found: Going[] = [];
  for (const weighingId of new Set(shares.map(({ row }) => String(row.weighingId)))) {
    const all = await tableOf(tx, 'WeighingShare').findMany({
      where: { weighingId, deletedAt: null },
    });
    const row = await tableOf(tx, 'Weighing').findUnique({ where: { id: weighingId } });
    const empty = all.every(({ id }) => goes.has(id));
    if (empty && row?.deletedAt === null) found.push({ entity: 'Weighing', row });
  }
  return found;
}
