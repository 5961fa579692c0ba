import type { SaidAmount, SaidLine, SaidScope } from '#lib/episode/said-line';
import type { Figure } from '#lib/figures/figure';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import { settled } from '#lib/units/print';

/** A number that has been said in front of the camera, in its nutrient's unit. */
export interface SpokenNumber {
  readonly nutrient: Nutrient;
  readonly scope: NumberScope;
  readonly amount: number;
  /** Said as it stands where left out: then it is fixed, and the numbers beside it give way. */
  readonly hedge?: SaidAmount['hedge'];
  /** The instant of saying. */
  readonly at?: string;
}

/**
 * The numbers of lines that were said, as the tally takes them: what was said as it stands is fixed first; 'about' and
 * 'at least' fix no whole number. Half of a dish is none of the tally's.
 * @param upTo where only the dishes up to one are tallied, its segment: what was said of the day so far is then the
 * day's number
 */
export function spokenNumbers(
  said: readonly Pick<SaidLine, 'scope' | 'numbers' | 'at'>[],
  upTo: string | null = null,
): SpokenNumber[] {
  return said.flatMap(({ scope, numbers, at }) => {
    const of = tallied(scope, upTo);
    if (of === null) return [];
    return numbers.map(({ nutrient, amount, hedge }) => ({
      nutrient,
      scope: of,
      amount,
      hedge,
      at,
    }));
  });
}

function tallied(scope: SaidScope, upTo: string | null): NumberScope | null {
  switch (scope.kind) {
    case 'day':
      return upTo === null ? { kind: 'day' } : null;
    case 'soFar':
      return scope.segmentId === upTo ? { kind: 'day' } : null;
    case 'whole':
      return { kind: 'whole', segmentId: scope.segmentId };
    case 'portion':
      return { kind: 'portion', portionId: scope.portionId };
    case 'half':
      return null;
  }
}

/**
 * What a number that was said covers (MODEL, D.1): half a unit about one said as it stands, five about one of 100 or
 * more that ends in 0, with 'about' 5 % and at least 5 kcal or 1 g; 'at least' and 'at most' all to their side.
 * @example saidSpan({ nutrient: 'energyKcal', amount: 640, hedge: 'exact' }) // { low: 635, high: 645 }
 */
export function saidSpan({
  nutrient,
  amount,
  hedge = 'exact',
}: Pick<SpokenNumber, 'nutrient' | 'amount' | 'hedge'>): {
  readonly low: number;
  readonly high: number;
} {
  const around = (half: number) => ({ low: settled(amount - half), high: settled(amount + half) });
  switch (hedge) {
    case 'atLeast':
      return { low: amount, high: Infinity };
    case 'atMost':
      return { low: -Infinity, high: amount };
    case 'about':
      return around(Math.max(nutrient === 'energyKcal' ? 5 : 1, amount * 0.05));
    case 'exact':
      return around(amount >= 100 && amount % 10 === 0 ? 5 : 0.5);
  }
}

/** Whether what was said misses a figure's hard bounds: no amount that its sources allow is covered by it. */
export function isOutside(
  spoken: SpokenNumber,
  { low, high }: Pick<Figure, 'low' | 'high'>,
): boolean {
  const span = saidSpan(spoken);
  return (
    (low !== null && settled(span.high) < settled(low)) ||
    (high !== null && settled(span.low) > settled(high))
  );
}

const HEDGES = { exact: '', about: 'about ', atLeast: 'at least ', atMost: 'at most ' } as const;

/** 'about ' before a number said so, nothing before one said as it stands. */
export function hedgeWord(hedge: SaidAmount['hedge'] = 'exact'): string {
  return HEDGES[hedge];
}
