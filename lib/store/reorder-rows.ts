import 'server-only';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { PARENTS } from '#lib/store/parents';
import { tableOf } from '#lib/store/table';

/** Rows that stand in an order that a person chooses. */
export type Ordered = 'Segment' | 'RecipeLine' | 'HouseShot';

/**
 * The order wanted, made of the rows that are there: those that have gone meanwhile are left out, and those
 * that have come since stand after the one that they follow now.
 * `orderOf(['a', 'new', 'b'], ['b', 'gone', 'a'])` → `['b', 'a', 'new']`.
 */
export function orderOf(present: readonly string[], wanted: readonly string[]): readonly string[] {
  const order = [...new Set(wanted)].filter((id) => present.includes(id));
  for (const [index, id] of present.entries()) {
    if (order.includes(id)) continue;
    const before = present[index - 1];
    order.splice(before === undefined ? 0 : order.indexOf(before) + 1, 0, id);
  }
  return order;
}

/**
 * The edits that put rows under a parent into an order; only those that change their place. The places in use
 * are dealt out anew, so that a row that was taken out comes back where it was.
 */
export async function reorderEdits(
  entity: Ordered,
  parentId: string,
  wanted: readonly string[],
): Promise<Edit[]> {
  const rows = await tableOf(database(), entity).findMany({
    where: { [PARENTS[entity].column]: parentId, deletedAt: null },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
  });
  const order = orderOf(
    rows.map(({ id }) => id),
    wanted,
  );
  const used = rows.map(({ position }) => Number(position));
  const distinct = new Set(used).size === used.length;
  return order.flatMap((id, index) => {
    const row = rows.find((each) => each.id === id);
    const position = distinct ? (used[index] ?? index) : index;
    if (!row || row.position === position) return [];
    return [{ op: 'update', entity, id, rev: row.rev, patch: { position } } as Edit];
  });
}

/** The living rows under a parent in their order, for a step up or down. */
export async function readOrder(entity: Ordered, parentId: string): Promise<readonly string[]> {
  const rows = await tableOf(database(), entity).findMany({
    where: { [PARENTS[entity].column]: parentId, deletedAt: null },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ id }) => id);
}

/** An order with one row a place up or down. `stepped(['a', 'b'], 'b', 'up')` → `['b', 'a']`. */
export function stepped(
  order: readonly string[],
  id: string,
  to: 'up' | 'down',
): readonly string[] {
  const at = order.indexOf(id);
  const other = order[to === 'up' ? at - 1 : at + 1];
  if (at < 0 || other === undefined) return order;
  return order.map((each) => (each === id ? other : each === other ? id : each));
}
