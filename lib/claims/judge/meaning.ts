import { plain } from '#lib/claims/judge-beyond/number-words';
import type { HeldAgainst } from '#lib/claims/judged';
import type { Figures } from '#lib/figures/episode-figures';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import type { JudgedDish } from './judge-context';

/** What a statement may be about, by where it stands and by what the person said of it. */
export interface About {
  /** The dishes that it may be about. */
  readonly dishes: readonly JudgedDish[];
  /** It may be about the day as well, as a title of several dishes. */
  readonly day: boolean;
  /** A portion of the one dish, where the words before the number name it. */
  readonly portionId: string | null;
  /** It is said of all of the dishes together; `oneOfEach`: of one portion of each. */
  readonly together?: { readonly oneOfEach: boolean };
  /** What the person said it is about. */
  readonly settled: {
    readonly portionId: string | null;
    readonly scope: 'whole' | 'portion' | 'half' | 'per100g' | 'day' | 'soFar';
  } | null;
}

/** One amount that a statement may be of, with its figures. */
export interface Meaning {
  /** 'Barley skillet, the whole dish'. */
  readonly called: string;
  /** Null where there is none, with `cause`. */
  readonly figures: Figures | null;
  /** An exact share of them. */
  readonly share: number;
  readonly cause: string | null;
  /** The amount whose published number is the one for this; null where none is published. */
  readonly published: NumberScope | null;
  readonly against: (nutrient: Nutrient) => HeldAgainst;
}

export const whole = (segmentId: string): NumberScope => ({ kind: 'whole', segmentId });

/** A meaning that has figures. */
export function aMeaning(
  called: string,
  figures: Figures | null | undefined,
  scope: NumberScope,
  more: Partial<Meaning> = {},
): Meaning {
  return {
    called,
    figures: figures ?? null,
    share: 1,
    cause: null,
    published: scope,
    against: (nutrient) => ({ kind: 'figure', nutrient, scope }),
    ...more,
  };
}

/** An amount of a dish, and where that is made several times, as much of all its makings: figures are of one of them. */
export function ofMakings(one: Meaning, { batches }: JudgedDish['dish']): Meaning[] {
  const makings = batches.num / batches.den;
  if (makings === 1 || makings === 0) return [one];
  const called = `${one.called}, made ${plain(makings)} times`;
  return [one, { ...one, called, share: one.share * makings, published: null }];
}
