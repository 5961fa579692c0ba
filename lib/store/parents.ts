import type { Problem } from '#lib/result';
import type { Tx } from '#lib/store/client';
import { problemAt } from '#lib/store/refusals';
import type { EntityName } from '#lib/store/rows';
import { tableOf } from '#lib/store/table';

/** Where rows hang: the column that names the parent, and the parent's table. */
export const PARENTS = {
  Segment: { column: 'episodeId', parent: 'Episode' },
  Target: { column: 'episodeId', parent: 'Episode' },
  StepLink: { column: 'episodeId', parent: 'Episode' },
  WebLink: { column: 'episodeId', parent: 'Episode' },
  EditText: { column: 'episodeId', parent: 'Episode' },
  ReadingMend: { column: 'episodeId', parent: 'Episode' },
  NamedFood: { column: 'episodeId', parent: 'Episode' },
  Variant: { column: 'segmentId', parent: 'Segment' },
  SwapStep: { column: 'variantId', parent: 'Variant' },
  Reply: { column: 'episodeId', parent: 'Episode' },
  Piece: { column: 'episodeId', parent: 'Episode' },
  PieceSegment: { column: 'pieceId', parent: 'Piece' },
  RecipeLine: { column: 'recipeId', parent: 'Recipe' },
  Portion: { column: 'recipeId', parent: 'Recipe' },
  Weighing: { column: 'recipeId', parent: 'Recipe' },
  WeighingShare: { column: 'weighingId', parent: 'Weighing' },
  TalkingPoint: { column: 'segmentId', parent: 'Segment' },
  Step: { column: 'segmentId', parent: 'Segment' },
  Shot: { column: 'segmentId', parent: 'Segment' },
  Perishable: { column: 'segmentId', parent: 'Segment' },
  PerishableSpan: { column: 'perishableId', parent: 'Perishable' },
  DayEpisode: { column: 'dayId', parent: 'FilmingDay' },
  DaySegment: { column: 'dayId', parent: 'FilmingDay' },
  Appointment: { column: 'dayId', parent: 'FilmingDay' },
  Pin: { column: 'dayId', parent: 'FilmingDay' },
  AllergenFact: { column: 'foodId', parent: 'Food' },
  YieldObservation: { column: 'foodId', parent: 'Food' },
  FoodVersion: { column: 'foodId', parent: 'Food' },
  StockLot: { column: 'foodId', parent: 'Food' },
  StockMove: { column: 'lotId', parent: 'StockLot' },
  PantryFood: { column: 'foodId', parent: 'Food' },
  Pack: { column: 'foodId', parent: 'Food' },
  Price: { column: 'packId', parent: 'Pack' },
  Oven: { column: 'kitchenId', parent: 'Kitchen' },
  OvenChange: { column: 'ovenId', parent: 'Oven' },
  Appliance: { column: 'kitchenId', parent: 'Kitchen' },
  HouseShot: { column: 'kitchenId', parent: 'Kitchen' },
  Scale: { column: 'kitchenId', parent: 'Kitchen' },
  MeasureSpread: { column: 'kitchenId', parent: 'Kitchen' },
} as const satisfies Partial<Record<EntityName, { column: string; parent: EntityName }>>;

/** A column that names another row, and what becomes of its row when that one is taken out. */
export interface Reference {
  readonly entity: EntityName;
  readonly column: string;
  readonly parent: EntityName;
  /** It goes too, or only lets go of what went. */
  readonly whenGone: 'goes' | 'letsGo';
}

const also = (
  entity: EntityName,
  column: string,
  parent: EntityName,
  whenGone: Reference['whenGone'] = 'goes',
): Reference => ({ entity, column, parent, whenGone });

/** What rows name: their parents first, then the others that they mean nothing without. */
export const REFERENCES: readonly Reference[] = [
  ...Object.entries(PARENTS).map(([entity, { column, parent }]) =>
    also(entity as EntityName, column, parent),
  ),
  also('Target', 'segmentId', 'Segment'),
  also('Target', 'portionId', 'Portion'),
  also('ReadingMend', 'segmentId', 'Segment'),
  also('ReadingMend', 'portionId', 'Portion'),
  also('SwapStep', 'lineId', 'RecipeLine'),
  also('Reply', 'segmentId', 'Segment', 'letsGo'),
  also('PieceSegment', 'segmentId', 'Segment'),
  also('StepLink', 'fromStepId', 'Step'),
  also('StepLink', 'toStepId', 'Step'),
  also('PerishableSpan', 'fromStepId', 'Step'),
  also('PerishableSpan', 'toStepId', 'Step'),
  also('WeighingShare', 'lineId', 'RecipeLine'),
  also('DayEpisode', 'episodeId', 'Episode'),
  also('DaySegment', 'segmentId', 'Segment'),
  also('Pin', 'stepId', 'Step'),
  also('Shot', 'stepId', 'Step', 'letsGo'),
  also('Step', 'applianceId', 'Appliance', 'letsGo'),
  also('RecipeLine', 'madeFromId', 'Recipe', 'letsGo'),
  also('Price', 'shopId', 'Shop'),
  also('Attachment', 'versionId', 'FoodVersion'),
];

/** What a parent is called where it is missed. */
const WORDS: Partial<Record<EntityName, string>> = {
  Episode: 'the episode',
  Segment: 'the dish or talk',
  Recipe: 'the dish',
  Portion: 'the portion',
  Variant: 'the saved swap',
  Piece: 'the piece',
  RecipeLine: 'the ingredient',
  Weighing: 'the reading',
  Step: 'the step',
  Perishable: 'the lot',
  FilmingDay: 'the filming day',
  Food: 'the food',
  FoodVersion: 'the reading of the label',
  StockLot: 'the pack in stock',
  Pack: 'the pack',
  Shop: 'the shop',
  Kitchen: 'the kitchen',
  Oven: 'the oven',
};

/** Columns that a row is about to have: all of a new one, those that change of another. */
export interface Placing {
  readonly path: string;
  readonly entity: EntityName;
  readonly columns: Readonly<Record<string, unknown>>;
}

/**
 * Whether rows hang on something that is still there: a row under a removed one would appear nowhere, and
 * what was typed would be lost as if it had been kept. A recipe is there as long as a segment has it.
 * @param arriving ids of the rows that the same command makes or brings back
 * @returns one problem with code 'gone' for each row without a living parent
 */
export async function parentProblems(
  tx: Tx,
  placings: readonly Placing[],
  arriving: ReadonlySet<string>,
): Promise<Problem[]> {
  const alive = new Map<string, Promise<boolean>>();
  const problems: Problem[] = [];
  for (const { path, entity, columns } of placings) {
    for (const { column, parent } of REFERENCES.filter((each) => each.entity === entity)) {
      const parentId = columns[column];
      if (typeof parentId !== 'string' || arriving.has(parentId)) continue;
      const known = alive.get(parentId) ?? isAlive(tx, parent, parentId);
      alive.set(parentId, known);
      if (await known) continue;
      const what = WORDS[parent] ?? parent;
      const words = `What this belongs to (${what}) was removed meanwhile: bring it back first.`;
      problems.push(problemAt(path, 'gone', words, { entity, parent, parentId }));
      break;
    }
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
