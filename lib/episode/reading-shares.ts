import type { AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import type { Ratio } from '#lib/episode/fields';
import type { Recipe } from '#lib/episode/recipe-schema';
import { evaluate } from '#lib/units/sum-of-products';

/**
 * Milligrams that each ingredient of a dish was weighed or planned at, by its id: what a reading that several of
 * them share is divided by where nobody says otherwise. An ingredient without grams is left out.
 * @example oil 20 g and sauce 60 g left in one pan: a quarter and three quarters are proposed
 */
export function gramsByLine(recipe: Recipe, context: AmountContext): ReadonlyMap<string, number> {
  return new Map(
    recipe.lines.flatMap((line) => {
      const { massMg, sources } = lineAmount(line, recipe.weighings, context);
      if (!massMg) return [];
      const at = new Map([...sources].map(([id, { value }]) => [id, value]));
      const mg = Math.round(evaluate(massMg, at));
      return mg > 0 ? [[line.id, mg] as const] : [];
    }),
  );
}

/** Parts of one whole, each a whole number above zero of the same unit. */
export interface Part {
  readonly lineId: string;
  readonly parts: number;
}

/** Parts together at most: what a fraction's ends hold. */
const MOST = 1_000_000_000;

/**
 * Exact shares of one reading that are in the proportion of the parts given and together make all of it, each in
 * lowest terms. A proportion too fine for a fraction's ends is rounded to thousandths of a part.
 * @example sharesOf([{ lineId: 'oil', parts: 20 }, { lineId: 'sauce', parts: 60 }]) // 1/4 and 3/4
 */
export function sharesOf(parts: readonly Part[]): readonly { lineId: string; share: Ratio }[] {
  const whole = parts.reduce((sum, part) => sum + part.parts, 0);
  const scale = whole > MOST ? MOST / 2 / whole : 1;
  const fitted = parts.map((part) => ({
    ...part,
    parts: scale === 1 ? part.parts : Math.max(1, Math.floor(part.parts * scale)),
  }));
  const den = fitted.reduce((sum, part) => sum + part.parts, 0);
  return fitted.map(({ lineId, parts: num }) => {
    const common = gcd(num, den);
    return { lineId, share: { num: num / common, den: den / common } };
  });
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
