import { claimFacts, type ClaimFacts } from '#lib/claims/claim-words/claim-facts';
import type { ClaimStatement } from '#lib/claims/claim-words/claim-judged';
import type { DishClaims } from '#lib/episode/edit-schema';
import { dishesOf } from '#lib/episode/context';
import type { Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../../support/build';

export const FOOD: DishClaims = { proteinPermille: null, raccMg: null, meal: false };

export interface Made {
  readonly region?: 'US' | 'EU';
  readonly title?: string;
  readonly claims?: Partial<DishClaims> | null;
  /** Weight of the finished dish in grams; null where it was not weighed. */
  readonly finished?: number | null;
  readonly portions?: number;
}

/** A dish of 1 kg of one food with these values in 100 g, weighed when it was finished. */
export function aPlainDish(values: Partial<Record<Nutrient, string>>, made: Made = {}): ClaimFacts {
  const { region = 'US', title = 'dish', claims = {}, finished = 1000, portions } = made;
  const recipe = aRecipe('r', [grams('a', 'food', 1000), grams('b', 'nothing', 0)], {
    weighings: finished === null ? [] : [aReading('w', 'finished', finished)],
    portions:
      portions === undefined
        ? []
        : [{ id: 'p', kind: 'count', name: `one of ${String(portions)}`, of: portions }],
  });
  const dish = aDish('d', recipe, {
    title,
    claims: claims === null ? null : { ...FOOD, ...claims },
  });
  const nothing = Object.fromEntries(Object.keys(values).map((name) => [name, '0']));
  const file = aFile([dish], [aFood('food', values), aFood('nothing', nothing)], {
    episode: { region },
    resolutionMg: 1,
  });
  const [only] = dishesOf(file.episode.segments);
  if (!only) throw new Error('a dish was made');
  return claimFacts(file, only);
}

/** A claim word as the grammar gives it. */
export function said(
  words: string,
  claim: ClaimStatement['claim'],
  nutrient?: Nutrient,
): Pick<ClaimStatement, 'claim' | 'nutrient' | 'words'> {
  return { words, claim, ...(nutrient === undefined ? {} : { nutrient }) };
}
