import Fraction from 'fraction.js';
import type { Ratio } from '#lib/episode/fields';
import type { Portion } from '#lib/episode/recipe-schema';

/** What the portions of a kind come to, and what of the dish is in none of them. */
export interface PortionSum {
  /** By grams of the finished dish; null where there are none. `leftMg` is null while the dish has no weight. */
  readonly byGrams: {
    readonly count: number;
    readonly mg: number;
    readonly leftMg: number | null;
  } | null;
  /** By eye; null where there are none. Exact: `left` is less than 0 where they are more than the dish. */
  readonly byEye: { readonly count: number; readonly share: Ratio; readonly left: Ratio } | null;
}

/**
 * Portions by grams and by eye held against all of the dish. Where they come to exactly all of it, their numbers are
 * tallied with the dish's. Equal portions are each a share by definition and are not summed.
 * @param finishedMg what the finished dish weighs; null where nothing says so
 * @example portionSum([aThird, aThird], null).byEye // { count: 2, share: 2/3, left: 1/3 }
 */
export function portionSum(portions: readonly Portion[], finishedMg: number | null): PortionSum {
  const masses = portions.filter((portion) => portion.kind === 'mass');
  const mg = masses.reduce((total, { massMg }) => total + massMg, 0);
  const eyes = portions.filter((portion) => portion.kind === 'byEye');
  const share = eyes.reduce(
    (total, { share: of }) => total.add(new Fraction(of.num).div(of.den)),
    new Fraction(0),
  );
  const leftMg = finishedMg === null ? null : finishedMg - mg;
  return {
    byGrams: masses.length === 0 ? null : { count: masses.length, mg, leftMg },
    byEye:
      eyes.length === 0
        ? null
        : { count: eyes.length, share: ratio(share), left: ratio(new Fraction(1).sub(share)) },
  };
}

function ratio(value: Fraction): Ratio {
  return { num: Number(value.s * value.n), den: Number(value.d) };
}
