import type { Problem } from '#lib/result';
import type { Tx } from '#lib/store/client';
import { problemAt } from '#lib/store/refusals';
import type { EntityName } from '#lib/store/rows';
import { tableOf, type StoredRow } from '#lib/store/table';

/** Where rows hang: the column that names the parent, and the parent's table. */
export const PARENTS = {
  Segment: { column: 'episodeId', parent: 'Episode' },
  Target: { column: 'episodeId', parent: 'Episode' },
  StepLink: { column: 'episodeId', parent: 'Episode' },
  WebLink: { column: 'episodeId', parent: 'Episode' },
  RecipeLine: { column: 'recipeId', parent: 'Recipe' },
  Portion: { column: 'recipeId', parent: 'Recipe' },
  Weighing: { column: 'recipeId', parent: 'Recipe' },
  TalkingPoint: { column: 'segmentId', parent: 'Segment' },
  Step: { column: 'segmentId', parent: 'Segment' },
  Shot: { column: 'segmentId', parent: 'Segment' },
  Perishable: { column: 'segmentId', parent: 'Segment' },
  DaySegment: { column: 'dayId', parent: 'FilmingDay' },
  AllergenFact: { column: 'foodId', parent: 'Food' },
  FoodVersion: { column: 'foodId', parent: 'Food' },
  StockLot: { column: 'foodId', parent: 'Food' },
  StockMove: { column: 'lotId', parent: 'StockLot' },
  Pack: { column: 'foodId', parent: 'Food' },
  Oven: { column: 'kitchenId', parent: 'Kitchen' },
  OvenChange: { column: 'ovenId', parent: 'Oven' },
  Scale: { column: 'kitchenId', parent: 'Kitchen' },
  MeasureSpread: { column: 'kitchenId', parent: 'Kitchen' },
} as const satisfies Partial<Record<EntityName, { column: string; parent: EntityName }>>;

const BY_NAME: Partial<Record<EntityName, { column: string; parent: EntityName }>> = PARENTS;

/**
 * Whether the rows to be created hang on something that is still there: a row under a removed one would
 * appear nowhere, and what was typed would be lost as if it had been kept.
 * A recipe is there as long as a segment has it.
 * @returns one problem with code 'gone' for each row without a living parent
 */
export async function parentProblems(
  tx: Tx,
  creates: readonly {
    readonly path: string;
    readonly entity: EntityName;
    readonly row: StoredRow;
  }[],
): Promise<Problem[]> {
  const made = new Set(creates.map(({ row }) => row.id));
  const alive = new Map<string, Promise<boolean>>();
  const problems: Problem[] = [];
  for (const { path, entity, row } of creates) {
    const link = BY_NAME[entity];
    const parentId = link && row[link.column];
    if (!link || typeof parentId !== 'string' || made.has(parentId)) continue;
    const known = alive.get(parentId) ?? isAlive(tx, link.parent, parentId);
    alive.set(parentId, known);
    if (await known) continue;
    const words = `What this belongs to (${link.parent}) was removed meanwhile: bring it back first.`;
    problems.push(problemAt(path, 'gone', words, { entity, parent: link.parent, parentId }));
  }
  return problems;
}

async function isAlive(tx: Tx, entity: EntityName, id: string): Promise<boolean> {
  const row = await tableOf(tx, entity).findUnique({ where: { id } });
  if (row === null || row.deletedAt !== null) return false;
  if (entity !== 'Recipe') return true;
  const segments = await tx.segment.findMany({
    where: { recipeId: id },
    select: { deletedAt: true },
  });
  return segments.length === 0 || segments.some(({ deletedAt }) => deletedAt === null);
}
