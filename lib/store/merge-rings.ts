import type { Problem } from '#lib/result';
import type { Tx } from '#lib/store/client';
import type { JournalEntry } from '#lib/store/journal';
import { problemAt } from '#lib/store/refusals';

/**
 * The problems of foods that would be part of themselves over others, each with code 'ring'. Asked inside the
 * transaction that writes them, so that of two that together close a ring only the first is kept.
 * @param entries what the command did, one for each of its edits and in their order
 */
export async function mergeRingProblems(
  tx: Tx,
  entries: readonly JournalEntry[],
): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const [index, { entity, entityId, before, after }] of entries.entries()) {
    if (entity !== 'Food' || typeof after?.mergedIntoId !== 'string') continue;
    if (before?.mergedIntoId === after.mergedIntoId) continue;
    if (!(await leadsTo(tx, after.mergedIntoId, entityId))) continue;
    const words = `${String(after.name)} would be part of itself: undo the other merging first.`;
    problems.push(problemAt(`edits[${index}].patch.mergedIntoId`, 'ring', words));
  }
  return problems;
}

/** Whether a food is, over however many others, part of another. */
async function leadsTo(tx: Tx, from: string, to: string): Promise<boolean> {
  const seen = new Set<string>();
  let at: string | null = from;
  while (at !== null && !seen.has(at)) {
    if (at === to) return true;
    seen.add(at);
    const food: { mergedIntoId: string | null } | null = await tx.food.findUnique({
      where: { id: at },
      select: { mergedIntoId: true },
    });
    at = food?.mergedIntoId ?? null;
  }
  return false;
}
