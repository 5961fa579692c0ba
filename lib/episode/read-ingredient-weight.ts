import type Fraction from 'fraction.js';
import type { FoodState } from '#lib/foods/food';
import type { MassRange } from '#lib/episode/fields';
import type { LineUnit } from '#lib/episode/recipe-schema';
import type { Problem } from '#lib/result';
import {
  aboutMass,
  massOf,
  type Amount,
  type SaidMass,
} from '#lib/episode/read-ingredient-amount-parts';
import type { AsideAmount } from '#lib/episode/read-ingredient-aside';
import { remark } from '#lib/episode/read-ingredient-number';

/** What the file format holds at most, in milligrams. */
const LARGEST_MG = 1_000_000_000;

/**
 * The weight that the words state for the whole amount beside its unit, or that it roughly is where it is one; null
 * where none, or in doubt.
 */
export function weightOf({
  amount,
  rest,
  unit,
  low,
  high,
  about,
  states,
  drainedWeight,
  remarks,
}: {
  amount: Amount | null;
  rest: readonly AsideAmount[];
  unit: LineUnit | null;
  low: Fraction | null;
  high: Fraction | null;
  about: boolean;
  states: readonly FoodState[];
  /** The weight of the pack is said to be the drained one. */
  drainedWeight: boolean;
  remarks: Problem[];
}): SaidMass | null {
  const own = about && unit !== null && low && high ? roughMass({ low, high }, unit) : null;
  if (unit === 'g' || unit === 'kg') return own;
  const ounces = unit === 'oz' || unit === 'lb';
  const stated = rest.filter(({ mass }) => mass !== null && (mass.inGrams || !ounces));
  const drainedSaid = stated.find(({ drained }) => drained);
  const chosen = drainedSaid ?? stated[0];
  const open = states.includes('drained') && !drainedSaid && !drainedWeight;
  if (unit === 'pack' && open && (amount?.each || chosen)) {
    remarks.push(
      remark(
        'drained-weight-unknown',
        'The weight on a pack holds the liquid too. Weigh what is left after draining, or write “drained weight 240 g”.',
      ),
    );
    return null;
  }
  if (amount?.each && !drainedSaid) return timesCount(amount.each, low, high);
  if (!chosen?.mass) return amount?.whole ? aboutMass(amount.whole, about) : own;
  if (chosen.of === 'each') return timesCount(chosen.mass, low, high);
  const one = low !== null && high !== null && low.compare(1) <= 0 && high.compare(1) <= 0;
  if (unit === 'pack' && chosen.of === 'unsaid' && low !== null && !one) {
    remarks.push(
      remark(
        'pack-weight-unclear',
        'Whether the weight is of each pack or of all is not said. Write “each” or “in total”.',
      ),
    );
    return null;
  }
  return chosen.mass;
}

/** The mass that a rough amount by weight stands for; null for one of another unit. */
function roughMass(range: { low: Fraction; high: Fraction }, unit: LineUnit): SaidMass | null {
  const plain = { kind: 'unit', unit, num: 1, den: 1, next: 0, modifiers: [] } as const;
  const mass = massOf(range, plain);
  return mass && aboutMass(mass, true);
}

function timesCount(each: SaidMass, low: Fraction | null, high: Fraction | null): SaidMass | null {
  if (!low || !high) return null;
  return { ...each, low: each.low.mul(low), high: each.high.mul(high) };
}

/** A said mass in whole milligrams; null where it is more than the file format holds. */
export function massRange({ low, high }: SaidMass): MassRange | null {
  const lowMg = Math.round(low.valueOf());
  const highMg = Math.round(high.valueOf());
  if (highMg > LARGEST_MG) return null;
  return { lowMg, valueMg: Math.round((lowMg + highMg) / 2), highMg };
}
