import type { Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { provisionalWords } from '#lib/figures/provisional-words';
import type { Nutrient } from '#lib/foods/nutrients';
import { applySwap } from '#lib/swap/apply-swap';
import { fileDifferences, type DishDifferences } from '#lib/swap/difference';
import { allergenChanges, type AllergenChanges } from '#lib/swap/swap-allergens';
import { costDifference, type CostDifference } from '#lib/swap/swap-cost';
import { swapRemarks, type SwapRemark } from '#lib/swap/swap-remarks';
import { unconfirmedParts } from '#lib/swap/unconfirmed-parts';
import { ok, type Result } from '#lib/result';

/** All that a variant changes in its dish. */
export interface SwapDifference extends DishDifferences {
  readonly variantId: string;
  readonly name: string;
  readonly segmentId: string;
  /** The episode as it would be. */
  readonly after: EpisodeFile;
  readonly cost: CostDifference;
  readonly allergens: AllergenChanges;
  readonly remarks: readonly SwapRemark[];
  /** Why its numbers must not go out, since they rest on what nobody has confirmed; empty where they may. */
  readonly unconfirmed: string;
}

/**
 * What a variant does: to every figure of its dish, its portions and the day, to what it costs, to its allergens, and
 * what the figures cannot say.
 * @returns problems where the variant names what the file does not have
 * @example swapDifference(file, fullFat) // whole.energyKcal.value 122, allergens.gained [], …
 */
export function swapDifference(
  file: EpisodeFile,
  variant: Variant,
  nutrients?: readonly Nutrient[],
): Result<SwapDifference> {
  const applied = applySwap(file, variant);
  if (!applied.ok) return applied;
  const after = applied.value;
  const { segmentId } = variant;
  return ok({
    variantId: variant.id,
    name: variant.name,
    segmentId,
    after,
    ...fileDifferences(file, after, segmentId, nutrients),
    cost: costDifference(file, after, segmentId),
    allergens: allergenChanges(file, after, segmentId),
    remarks: swapRemarks(file, after, variant),
    unconfirmed: provisionalWords(unconfirmedParts(file, after, segmentId)),
  });
}
