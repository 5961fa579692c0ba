import 'server-only';
import type { Food } from '#lib/foods/food';
import { followingParts, mergeRefusal, type Mergeable } from '#lib/foods/merge-foods';
import { failed, ok, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID, SHARED_CREATOR_ID } from '#lib/store/creators';
import { rowsNaming, type NamingRow } from '#lib/store/foods-named';
import { readStoredFood, type StoredFood } from '#lib/store/read-foods';
import { problemAt } from '#lib/store/refusals';

/** Two foods of which the first is to become part of the second. */
export interface Merge {
  readonly from: StoredFood;
  readonly into: StoredFood;
  /** Rows that name the first, which follow. */
  readonly naming: readonly NamingRow[];
}

/**
 * Rows that follow. Where something was said of the other food at home, that stands, and what was said of this one
 * stays with it.
 */
async function rowsFollowing(
  fromId: string,
  intoId: string,
  creatorId: string,
): Promise<readonly NamingRow[]> {
  const said = await database().pantryFood.count({
    where: { foodId: intoId, creatorId, deletedAt: null },
  });
  const naming = await rowsNaming(fromId, creatorId);
  return said === 0 ? naming : naming.filter(({ entity }) => entity !== 'PantryFood');
}

/** What a food is and what it is part of; null where there is none. */
export async function readMergeable(
  id: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Mergeable | null> {
  const food = await database().food.findFirst({
    where: { id, deletedAt: null, creatorId: { in: [creatorId, SHARED_CREATOR_ID] } },
    select: { id: true, name: true, creatorId: true, mergedIntoId: true },
  });
  if (!food) return null;
  const { mergedIntoId } = food;
  const mergedInto =
    mergedIntoId === null
      ? null
      : await database().food.findUnique({
          where: { id: mergedIntoId },
          select: { id: true, name: true },
        });
  return { id, name: food.name, own: food.creatorId === creatorId, mergedInto };
}

/**
 * Two foods that can be merged, with what would follow; refused in words where they cannot (`mergeRefusal`), or
 * where the first is part of the second already and nothing names it any more.
 */
export async function readMerge(
  fromId: string,
  intoId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Result<Merge>> {
  const [first, second] = [
    await readMergeable(fromId, creatorId),
    await readMergeable(intoId, creatorId),
  ];
  const [from, into] = [
    await readStoredFood(fromId, creatorId),
    await readStoredFood(intoId, creatorId),
  ];
  if (!first || !second || !from || !into) {
    return failed(problemAt('into', 'gone', 'One of the two foods is no longer there.'));
  }
  const refusal = mergeRefusal(first, second);
  if (refusal) return failed(refusal);
  const naming = await rowsFollowing(fromId, intoId, creatorId);
  if (first.mergedInto !== null && naming.length === 0) {
    const words = `${first.name} is part of ${second.name} already, and nothing names it any more.`;
    return failed(problemAt('into', 'merged', words));
  }
  return ok({ from, into, naming });
}

/**
 * The edits by which a food becomes part of another: whatever names it names the other, and its measures, cooked
 * weights and allergens go along. Its label readings stay with it. As one command it is one act of the journal;
 * numbers that were locked rest on their own snapshot and are not touched.
 *
 * Law: `undo` of these edits leaves every episode's file as it was, byte for byte.
 */
export function mergeEdits({ from, into, naming }: Merge): Edit[] {
  const already = naming.filter(({ row }) => row.id !== from.id && row.id !== into.id);
  return [
    {
      op: 'update',
      entity: 'Food',
      id: from.id,
      rev: from.revs[from.id] ?? 0,
      patch: { mergedIntoId: into.id },
    },
    ...(into.food.witnessId === from.id ? [withoutWitness(into)] : []),
    ...already.map((named) => following(named, from.id, into.id)),
    ...partEdits(from, into.food),
  ];
}

/** A food is no witness to itself. */
function withoutWitness({ id, revs }: StoredFood): Edit {
  return { op: 'update', entity: 'Food', id, rev: revs[id] ?? 0, patch: { witnessId: null } };
}

function following({ entity, row, columns }: NamingRow, fromId: string, intoId: string): Edit {
  const patch: Record<string, string | null> = Object.fromEntries(
    columns.map((column) => [column, intoId]),
  );
  if (entity === 'RecipeLine') {
    const foodId = row.foodId === fromId ? intoId : row.foodId;
    const orFoodId = row.orFoodId === fromId ? intoId : row.orFoodId;
    // One that could be either of two which are one is that one.
    if (orFoodId !== null && orFoodId === foodId) patch.orFoodId = null;
  }
  return { op: 'update', entity, id: row.id, rev: row.rev, patch } as Edit;
}

function partEdits(from: StoredFood, into: Food): Edit[] {
  const { measures, yields, allergens } = followingParts(from.food, into);
  const { revs } = from;
  const moved = (
    entity: 'YieldObservation' | 'AllergenFact',
    parts: readonly { readonly id: string }[],
    after: number,
  ) =>
    parts.map(({ id }, index): Edit => {
      const patch = { foodId: into.id, position: after + index };
      return { op: 'update', entity, id, rev: revs[id] ?? 0, patch };
    });
  return [
    ...measures.map(({ id }, index): Edit => {
      const patch = { versionId: into.version.id, position: into.measures.length + index };
      return { op: 'update', entity: 'FoodMeasure', id, rev: revs[id] ?? 0, patch };
    }),
    ...moved('YieldObservation', yields, into.yields.length),
    ...moved('AllergenFact', allergens, into.allergens.length),
  ];
}
