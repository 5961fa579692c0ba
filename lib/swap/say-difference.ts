import { aboutTolerance } from '#lib/figures/judge-limit';
import { missingText } from '#lib/figures/print-figure';
import { NUTRIENTS } from '#lib/foods/nutrients';
import type { Difference } from '#lib/swap/difference';
import { roundTo, settled } from '#lib/units/print';

/** A difference in whole numbers that hold: over all of its likely range what is said is so. */
export interface SaidDifference {
  /** `alike`: so small that it stays within what `about` allows of nothing; `open`: nobody can say. */
  readonly kind: 'alike' | 'about' | 'range' | 'oneSided' | 'open';
  /** `about 40 calories more`, `3 to 5 g more protein`, `within a gram`. */
  readonly text: string;
}

const SPOKEN: Partial<Readonly<Record<Difference['nutrient'], string>>> = {
  energyKcal: 'calories',
  energyKj: 'kJ',
};

/**
 * Says a difference in whole numbers that hold by its likely range: 'about' where all of the range lies within what
 * 'about' allows (5 %, and at least 5 kcal or 1 g), else the range rounded outward.
 * @example sayDifference({ nutrient: 'energyKcal', value: 41.2, likelyLow: 39, likelyHigh: 43, … }).text // 'about 41 calories more'
 */
export function sayDifference(difference: Difference): SaidDifference {
  const { nutrient, likelyLow: low, likelyHigh: high, missing } = difference;
  const noun = (count: string, more: string) => nounOf(nutrient, count, more);
  if (low === null && high === null) return { kind: 'open', text: missingText(missing) };
  if (low === null || high === null) return oneSided(difference, noun);
  const [from, to] = [settled(low), settled(high)];
  const least = Math.ceil(Math.max(1, aboutTolerance(nutrient, 0)));
  if (from >= -least && to <= least)
    return { kind: 'alike', text: `within ${unitsOf(nutrient, least)}` };
  if (from > 0 || to < 0) {
    const more = from > 0 ? 'more' : moreOrLess(nutrient);
    const [small, large] = from > 0 ? [from, to] : [-to, -from];
    const middle = Math.abs(difference.value);
    for (const step of [50, 10, 5, 1]) {
      const said = roundTo(middle, step);
      const within = aboutTolerance(nutrient, said);
      const near = Math.abs(said - middle) <= Math.max(within / 2, 0.5);
      if (said > 0 && near && small >= said - within && large <= said + within) {
        return { kind: 'about', text: `about ${noun(String(said), more)}` };
      }
    }
    const [floor, ceil] = [Math.floor(small), Math.ceil(large)];
    const range = floor === 0 ? `up to ${ceil}` : `${floor} to ${ceil}`;
    return { kind: 'range', text: noun(range, more) };
  }
  const text = `between ${noun(String(Math.ceil(-from)), moreOrLess(nutrient))} and ${Math.ceil(to)} more`;
  return { kind: 'range', text };
}

function oneSided(
  { nutrient, likelyLow: low, likelyHigh: high, missing }: Difference,
  noun: (count: string, more: string) => string,
): SaidDifference {
  if (low !== null && low >= 1) {
    return { kind: 'oneSided', text: `at least ${noun(String(Math.floor(settled(low))), 'more')}` };
  }
  if (high !== null && high <= -1) {
    const count = String(Math.floor(settled(-high)));
    return { kind: 'oneSided', text: `at least ${noun(count, moreOrLess(nutrient))}` };
  }
  return { kind: 'open', text: missingText(missing) };
}

/** Calories are counted, grams are not. */
function moreOrLess(nutrient: Difference['nutrient']): string {
  return nutrient === 'energyKcal' ? 'fewer' : 'less';
}

function nounOf(nutrient: Difference['nutrient'], count: string, more: string): string {
  const spoken = SPOKEN[nutrient];
  if (spoken) return `${count} ${spoken} ${more}`;
  const { unit, label } = NUTRIENTS[nutrient];
  return `${count} ${unit} ${more} ${label}`;
}

function unitsOf(nutrient: Difference['nutrient'], count: number): string {
  const { unit } = NUTRIENTS[nutrient];
  if (unit === 'g' && count === 1) return 'a gram';
  return nutrient === 'energyKcal' ? `${count} calories` : `${count} ${unit}`;
}
