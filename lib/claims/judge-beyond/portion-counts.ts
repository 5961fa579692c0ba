import { ENGLISH } from '#lib/claims/english/english';
import type { JudgingWords } from '#lib/claims/judging-words';
import { onceFor } from '#lib/claims/once-for';
import type { AmountContext } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { Portion, Recipe } from '#lib/episode/recipe-schema';
import type { LikelyRange } from '#lib/claims/said-interval';

/** How many of a portion a recipe makes, once made. */
export interface PortionCount {
  readonly name: string;
  readonly count: LikelyRange;
  /** Whether it is so many equal ones by definition. */
  readonly exact: boolean;
}

const exactly = (value: number): LikelyRange => ({ value, low: value, high: value });

/**
 * How many of each of its portions a recipe makes: so many equal ones; as often as the share by eye, or the grams, go
 * into the dish. What its weight is needed for and not known is left out.
 */
export const portionCounts = onceFor((recipe: Recipe, context: AmountContext): PortionCount[] => {
  const finished = recipe.portions.some(({ kind }) => kind === 'mass')
    ? finishedWeight(recipe, context)
    : null;
  return recipe.portions.flatMap((portion): PortionCount[] => {
    const count = countOf(portion, finished?.interval ?? null);
    return count ? [{ name: portion.name, count, exact: portion.kind === 'count' }] : [];
  });
});

function countOf(portion: Portion, finished: LikelyRange | null): LikelyRange | null {
  if (portion.kind === 'count') return exactly(portion.of);
  if (portion.kind === 'byEye') {
    const value = portion.share.den / portion.share.num;
    const miss = portion.permille / 1000;
    const high = miss < 1 ? value / (1 - miss) : Infinity;
    return { value, low: value / (1 + miss), high };
  }
  if (finished === null) return null;
  const of = (mg: number) => mg / portion.massMg;
  return { value: of(finished.value), low: of(finished.low), high: of(finished.high) };
}

/** Of several counts those whose name is of what is said; all of them where none has such a name. */
export function countsCalled<T extends Pick<PortionCount, 'name'>>(
  counts: readonly T[],
  as: keyof JudgingWords['called'],
): readonly T[] {
  const named = counts.filter(({ name }) => ENGLISH.judging.called[as].test(name));
  return named.length > 0 ? named : counts;
}
