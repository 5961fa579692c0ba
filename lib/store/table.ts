import type { Tx } from '#lib/store/client';
import { LONG_COLUMNS, type EntityName } from '#lib/store/rows';

/** A row as the database has it. */
export interface StoredRow extends Record<string, unknown> {
  readonly id: string;
  readonly creatorId: string;
  readonly rev: number;
  readonly deletedAt: Date | null;
}

/** What the funnel needs of any table; the generated types differ from table to table. */
interface Table {
  findUnique(args: { where: { id: string } }): Promise<StoredRow | null>;
  findMany(args: { where: object; orderBy?: object; omit?: object }): Promise<StoredRow[]>;
  count(args: { where: object }): Promise<number>;
  createMany(args: { data: readonly object[] }): Promise<{ count: number }>;
  updateMany(args: { where: object; data: object }): Promise<{ count: number }>;
}

/** What leaves the long columns of a table out, for who reads its rows to know of them. */
export function withoutLong(entity: EntityName): { omit?: Record<string, true> } {
  const long = LONG_COLUMNS[entity];
  return long ? { omit: Object.fromEntries(long.map((name) => [name, true as const])) } : {};
}

/** The table of an entity: `RecipeLine` is `tx.recipeLine`. */
export function tableOf(tx: Tx, entity: EntityName): Table {
  const name = `${entity.charAt(0).toLowerCase()}${entity.slice(1)}`;
  return (tx as unknown as Record<string, Table>)[name] as Table;
}
