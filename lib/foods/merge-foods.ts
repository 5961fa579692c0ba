import type { AllergenFact, Food, FoodMeasure, YieldObservation } from '#lib/foods/food';
import type { Problem } from '#lib/result';

/** What must be known of two foods before one becomes part of the other. */
export interface Mergeable {
  readonly id: string;
  readonly name: string;
  /** False for a food of a published table, which nobody changes. */
  readonly own: boolean;
  /** The food that it is part of already, or null. */
  readonly mergedInto: { readonly id: string; readonly name: string } | null;
}

/**
 * Why a food cannot become part of another, in words; null where it can. A food that is part of another is a
 * dead end: nothing is merged into it, so that no ring can come about. What still names a food after it was
 * merged (as a dish that was brought back) can be sent after it, to the same food only.
 * @example mergeRefusal(oats, oats) // { code: 'itself', … }
 */
export function mergeRefusal(from: Mergeable, into: Mergeable): Problem | null {
  const refused = (code: string, message: string): Problem => ({
    path: 'into',
    code,
    message,
    facts: { from: from.id, into: into.id },
  });
  if (from.id === into.id) {
    return refused('itself', `${from.name} cannot become part of itself: choose another food.`);
  }
  if (!from.own) {
    return refused(
      'published',
      `${from.name} stands in a published table and stays there. Merge your own food into it instead.`,
    );
  }
  if (into.mergedInto?.id === from.id) {
    return refused(
      'ring',
      `${into.name} is part of ${from.name} already: the other way round would be a ring. Undo that first.`,
    );
  }
  if (into.mergedInto !== null) {
    return refused(
      'merged',
      `${into.name} is part of ${into.mergedInto.name} now: choose ${into.mergedInto.name}.`,
    );
  }
  if (from.mergedInto !== null && from.mergedInto.id !== into.id) {
    return refused(
      'merged',
      `${from.name} is part of ${from.mergedInto.name} already: undo that first.`,
    );
  }
  return null;
}

/** Parts of a food that go with it into another. */
export interface FollowingParts {
  /** Measures by a name that the other does not have. */
  readonly measures: readonly FoodMeasure[];
  readonly yields: readonly YieldObservation[];
  /**
   * What it contains, may contain or is proposed to; a denial stays behind, since it was said of this food
   * alone and would hide what the other's label declares.
   */
  readonly allergens: readonly AllergenFact[];
}

/**
 * What of a food goes with it when it becomes part of another.
 * @example followingParts(oats with a cup of 80 g, rolled oats with a cup of 90 g).measures // []
 */
export function followingParts(from: Food, into: Food): FollowingParts {
  const measured = new Set(into.measures.map(({ name }) => name));
  const said = new Set(into.allergens.map(({ allergen, standing }) => `${allergen} ${standing}`));
  return {
    measures: from.measures.filter(({ name }) => !measured.has(name)),
    yields: from.yields,
    allergens: from.allergens.filter(
      ({ allergen, standing }) => standing !== 'denied' && !said.has(`${allergen} ${standing}`),
    ),
  };
}

/** The food that remains, with what follows from the one that becomes part of it. */
export function mergedFood(from: Food, into: Food): Food {
  const { measures, yields, allergens } = followingParts(from, into);
  return {
    ...into,
    witnessId: into.witnessId === from.id ? null : into.witnessId,
    measures: [...into.measures, ...measures],
    yields: [...into.yields, ...yields],
    allergens: [...into.allergens, ...allergens],
  };
}
