import { z } from 'zod';
import { LARGEST_PHOTO, PHOTO_MIMES } from '#lib/foods/photo-kinds';
import { folded } from '#lib/store/fold';
import { id, instant, positive, text, whole } from '#lib/store/rows-basic';
import { DAY_ROWS } from '#lib/store/rows-day';
import { EDIT_ROWS } from '#lib/store/rows-edit';
import { EPISODE_ROWS } from '#lib/store/rows-episode';
import { FOOD_ROWS } from '#lib/store/rows-foods';
import { KITCHEN_ROWS } from '#lib/store/rows-kitchen';
import { PUBLISH_ROWS } from '#lib/store/rows-publish';

/**
 * Every table by name with the columns that a caller gives, `id` first. The funnel adds `creatorId`, `rev`
 * and `deletedAt`, and the folded columns. What does not pass here does not reach the database.
 */
export const ROWS = {
  ...EPISODE_ROWS,
  ...EDIT_ROWS,
  ...DAY_ROWS,
  ...FOOD_ROWS,
  ...KITCHEN_ROWS,
  ...PUBLISH_ROWS,
  Draft: z.strictObject({
    id,
    entity: text(40),
    entityId: id,
    baseRev: whole,
    payload: z.string(),
    at: instant,
  }),
  PairedDevice: z.strictObject({
    id,
    name: text(80).min(1),
    tokenHash: text(64).regex(/^[0-9a-f]{64}$/),
    pairedAt: instant,
    endedAt: instant.nullable(),
  }),
  Attachment: z.strictObject({
    id,
    sha256: text(64).regex(/^[0-9a-f]{64}$/),
    mime: z.enum(PHOTO_MIMES),
    name: text(240).min(1),
    size: positive.max(LARGEST_PHOTO),
    versionId: id,
  }),
} as const;

export type EntityName = keyof typeof ROWS;
export const ENTITY_NAMES = Object.keys(ROWS) as readonly EntityName[];

/** A row as a caller gives it, and as it stands after checking. */
export type RowInput<E extends EntityName = EntityName> = z.input<(typeof ROWS)[E]>;
export type Row<E extends EntityName = EntityName> = z.output<(typeof ROWS)[E]>;

/** What is written once and never changed; a mistake is struck out and written again. */
export const APPEND_ONLY: ReadonlySet<EntityName> = new Set([
  'Weighing',
  'StockMove',
  'DayEvent',
  'Tick',
  'FoodVersion',
  'Attachment',
  'NumbersLock',
  'Published',
  'Correction',
]);

/**
 * Columns that may hold megabytes. They never change, so that the journal can do with their beginning, and what reads
 * many rows for their ids can leave them out.
 */
export const LONG_COLUMNS: Partial<Record<EntityName, readonly string[]>> = {
  EditText: ['text'],
};

/** JSON columns that may be null, which the database client wants to be told in a way of its own. */
export const NULLABLE_JSON: Partial<Record<EntityName, readonly string[]>> = {
  Creator: ['layout'],
  FoodVersion: ['secondValues', 'factors'],
  RecipeLine: ['bounded'],
  Shop: ['sections'],
};

/** Columns that follow from others, for searching. */
export function derivedColumns(
  entity: EntityName,
  row: Readonly<Record<string, unknown>>,
): Record<string, string> {
  const named = entity === 'Food' || entity === 'Shop';
  return named && typeof row.name === 'string' ? { nameFolded: folded(row.name) } : {};
}

/** The columns that the caller gives for a table, in order. */
export function columnsOf(entity: EntityName): readonly string[] {
  return Object.keys(ROWS[entity].shape);
}
