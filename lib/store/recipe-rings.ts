import type { Problem } from '#lib/result';
import { recipeRing, type RecipeTies } from '#lib/episode/made-from';
import type { Tx } from '#lib/store/client';
import type { JournalEntry } from '#lib/store/journal';
import { ALIVE, byIds } from '#lib/store/load';
import { problemAt } from '#lib/store/refusals';

/**
 * The problems of ingredients that would make a dish from itself, at whatever depth: each with code 'ring' and the
 * dishes of the ring by name. Asked inside the transaction that writes them, so that of two that together close a
 * ring only the first is kept.
 * @param entries what the command did, one for each of its edits and in their order
 */
export async function ringProblems(tx: Tx, entries: readonly JournalEntry[]): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const [index, { entity, before, after }] of entries.entries()) {
    if (entity !== 'RecipeLine' || after?.deletedAt !== null) continue;
    const { recipeId, madeFromId } = after;
    if (typeof madeFromId !== 'string' || typeof recipeId !== 'string') continue;
    const tied = before?.deletedAt === null && before.madeFromId === madeFromId;
    if (tied) continue;
    const ties = await tiesBelow(tx, [recipeId, madeFromId]);
    const ring = recipeRing(ties, { in: recipeId, from: madeFromId });
    if (!ring) continue;
    const path = `edits[${index}].${before === null ? 'row' : 'patch'}.madeFromId`;
    const words = `This would make a dish from itself: ${ring.join(' → ')}.`;
    problems.push(problemAt(path, 'ring', words, { ring: ring.join(' → ') }));
  }
  return problems;
}

/** Recipes and those that they are made from, at any depth, each once. */
async function tiesBelow(tx: Tx, from: readonly string[]): Promise<readonly RecipeTies[]> {
  const found: RecipeTies[] = [];
  const seen = new Set<string>();
  let latest = [...new Set(from)];
  while (latest.length > 0) {
    for (const id of latest) seen.add(id);
    const recipes = await byIds(latest, (some) =>
      tx.recipe.findMany({
        where: { id: { in: some } },
        select: {
          id: true,
          title: true,
          segments: { where: ALIVE, select: { title: true }, take: 1 },
          lines: { where: { ...ALIVE, madeFromId: { not: null } }, select: { madeFromId: true } },
        },
      }),
    );
    const below = recipes.flatMap(({ id, title, segments, lines }) => {
      const named = lines.flatMap(({ madeFromId }) => madeFromId ?? []);
      const ties = named.map((recipeId) => ({ madeFrom: { recipeId, rev: 1 } }));
      // A dish is called as its segment, which may have been renamed since.
      found.push({ id, title: segments[0]?.title ?? title, lines: ties });
      return named;
    });
    latest = [...new Set(below)].filter((id) => !seen.has(id));
  }
  return found;
}
