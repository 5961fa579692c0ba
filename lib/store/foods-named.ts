import 'server-only';
import { database, type Tx } from '#lib/store/client';
import { ALIVE } from '#lib/store/load';
import type { EntityName } from '#lib/store/rows';
import { tableOf, type StoredRow } from '#lib/store/table';

/**
 * Every column that names a food and follows it when it becomes part of another. Readings of its label stay with
 * the food that they are of, and what a device entered on a shopping list is never changed. A new table that names
 * foods is a row here.
 */
export const FOLLOWING_COLUMNS: readonly (readonly [EntityName, string])[] = [
  ['RecipeLine', 'foodId'],
  ['RecipeLine', 'orFoodId'],
  ['SwapStep', 'foodId'],
  ['LineMatch', 'foodId'],
  ['StockLot', 'foodId'],
  ['Pack', 'foodId'],
  ['PantryFood', 'foodId'],
  ['Food', 'witnessId'],
  ['Food', 'mergedIntoId'],
];

/** A row that names a food, with all columns by which it does. */
export interface NamingRow {
  readonly entity: EntityName;
  readonly row: StoredRow;
  readonly columns: readonly string[];
}

/** Living rows of a creator that name a food, in the order of the list and of their ids. */
export async function rowsNaming(
  foodId: string,
  creatorId: string,
  tx: Tx = database(),
): Promise<readonly NamingRow[]> {
  const found = new Map<string, { entity: EntityName; row: StoredRow; columns: string[] }>();
  for (const [entity, column] of FOLLOWING_COLUMNS) {
    const rows = await tableOf(tx, entity).findMany({
      where: { [column]: foodId, creatorId, ...ALIVE },
      orderBy: { id: 'asc' },
    });
    for (const row of rows) {
      const known = found.get(row.id);
      if (known) known.columns.push(column);
      else found.set(row.id, { entity, row, columns: [column] });
    }
  }
  return [...found.values()];
}
