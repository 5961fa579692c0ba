import { aboutTolerance } from '#lib/figures/judge-limit';
import { missingText } from '#lib/figures/print-figure';
import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Difference } from '#lib/swap/difference';
import { roundTo, settled } from '#lib/units/print';

/** A difference in whole numbers that hold: over all of its likely range what is said is so. */
export interface SaidDifference {
  /** `alike`: so small that it stays within what `about` allows of nothing; `open`: nobody can say. */
  readonly kind: 'alike' | 'about' | 'range' | 'oneSided' | 'open';
  /** `about 40 calories more`, `3 to 5 g more protein`, `within a gram`. */
  readonly text: string;
}

/**
 * Says a difference in whole numbers that hold by its likely range: 'about' where all of the range lies within what
 * 'about' allows (5 %, and at least 5 kcal or 1 g), else the range rounded outward.
 * @param region whose word for energy is said
 * @example sayDifference({ nutrient: 'energyKcal', value: 41.2, likelyLow: 39, likelyHigh: 43, … }, 'US').text
 *   // 'about 41 calories more'; in the EU 'about 41 kcal more'
 */
export function sayDifference(difference: Difference, region: Region): SaidDifference {
  const { nutrient, likelyLow: low, likelyHigh: high, missing } = difference;
  const noun = (count: string, more: string) => nounOf(nutrient, region, count, more);
  const fewer = isCounted(nutrient, region) ? 'fewer' : 'less';
  if (low === null && high === null) return { kind: 'open', text: missingText(missing) };
  if (low === null || high === null) return oneSided(difference, noun, fewer);
  const [from, to] = [settled(low), settled(high)];
  const least = Math.ceil(Math.max(1, aboutTolerance(nutrient, 0)));
  if (from >= -least && to <= least)
    return { kind: 'alike', text: `within ${unitsOf(nutrient, region, least)}` };
  if (from > 0 || to < 0) {
    const more = from > 0 ? 'more' : fewer;
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
  const text = `between ${noun(String(Math.ceil(-from)), fewer)} and ${Math.ceil(to)} more`;
  return { kind: 'range', text };
}

function oneSided(
  { likelyLow: low, likelyHigh: high, missing }: Difference,
  noun: (count: string, more: string) => string,
  fewer: string,
): SaidDifference {
  if (low !== null && low >= 1) {
    return { kind: 'oneSided', text: `at least ${noun(String(Math.floor(settled(low))), 'more')}` };
  }
  if (high !== null && high <= -1) {
    const count = String(Math.floor(settled(-high)));
    return { kind: 'oneSided', text: `at least ${noun(count, fewer)}` };
  }
  return { kind: 'open', text: missingText(missing) };
}

/** Calories are counted; grams and kcal are measured. */
const isCounted = (nutrient: Nutrient, region: Region) =>
  nutrient === 'energyKcal' && region === 'US';

function nounOf(nutrient: Nutrient, region: Region, count: string, more: string): string {
  const { unit, label } = NUTRIENTS[nutrient];
  if (isCounted(nutrient, region)) return `${count} ${label} ${more}`;
  const isEnergy = nutrient === 'energyKcal' || nutrient === 'energyKj';
  return isEnergy ? `${count} ${unit} ${more}` : `${count} ${unit} ${more} ${label}`;
}

function unitsOf(nutrient: Nutrient, region: Region, count: number): string {
  const { unit, label } = NUTRIENTS[nutrient];
  if (unit === 'g' && count === 1) return 'a gram';
  return `${count} ${isCounted(nutrient, region) ? label : unit}`;
}
