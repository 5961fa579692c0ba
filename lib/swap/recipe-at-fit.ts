import { dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { failed, ok, type Result } from '#lib/result';
import { applySwap } from '#lib/swap/apply-swap';
import { isOfGrams } from '#lib/swap/counted-amount';
import { textAtAmount } from '#lib/swap/text-at-amount';

/** What of a recipe is another once fitted amounts are put into it. */
export interface RecipeAtFit {
  /** The ingredients that change, with their new amounts and words. */
  readonly lines: readonly RecipeLine[];
  /** Readings that are of amounts that no longer are: those of these ingredients, and of the finished dish. */
  readonly readings: readonly string[];
}

/**
 * Puts fitted amounts into a dish for good, unlike a swap, which leaves it as it is. What was weighed of the changed
 * ingredients, and the finished dish, was of other amounts and goes.
 * @returns problems where a reading is shared with an ingredient that does not change, so that it cannot go
 * @example recipeAtFit(file, 'bowl', [{ kind: 'amount', lineId: 'curd', massMg: 295_000 }]) // lines [295 g curd]
 */
export function recipeAtFit(
  file: EpisodeFile,
  segmentId: string,
  steps: readonly SwapStep[],
): Result<RecipeAtFit> {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const applied = applySwap(file, { id: 'fit', segmentId, steps: [...steps] });
  if (!applied.ok) return applied;
  const after = dishesOf(applied.value.episode.segments).find(({ id }) => id === segmentId);
  const own = new Set(steps.flatMap((step) => (step.kind === 'amount' ? step.lineId : [])));
  const weighings = dish?.recipe.weighings ?? [];
  const touched = weighings.filter(
    (each) => isOfGrams(each) && each.shares.some(({ lineId }) => own.has(lineId)),
  );
  const shared = touched.find(({ shares }) => shares.some(({ lineId }) => !own.has(lineId)));
  if (shared) {
    const texts = (dish?.recipe.lines ?? [])
      .filter(({ id }) => shared.shares.some(({ lineId }) => lineId === id))
      .map(({ text }) => text);
    const message = `One reading of the scale is of ${texts.join(' and ')} together, and only one of them would change: keep these amounts as a swap, or take that reading out first.`;
    return failed({ path: '', code: 'shared-reading', message });
  }
  const finished = weighings.filter(({ kind }) => kind === 'finished');
  return ok({
    lines: (after?.recipe.lines ?? [])
      .filter(({ id }) => own.has(id))
      .map((line) => {
        const text = textAtAmount(line);
        // An amount in spoons that no longer holds would stand beside the grams.
        return line.planned ? { ...line, text, quantity: null, unit: null } : { ...line, text };
      }),
    readings: [...touched, ...finished].map(({ id }) => id),
  });
}
