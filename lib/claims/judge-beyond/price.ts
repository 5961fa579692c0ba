import type { Cost } from '#lib/claims/edit-facts';
import type { BeyondContext, BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { meaningOf, settle, type Meaning } from '#lib/claims/judge-beyond/meanings';
import {
  countsCalled,
  portionCounts,
  type PortionCount,
} from '#lib/claims/judge-beyond/portion-counts';
import { cannotSay, type Verdicted } from '#lib/claims/judge/verdicted';
import { saidInterval, type SaidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import type { AmountContext } from '#lib/episode/context';
import { printTo, settled } from '#lib/units/print';
import { minorDecimals } from '#lib/units/print-money';

export type Price = Statement & { readonly kind: 'price' };

/** A part of what a cost is of: all of it, or one of so many. */
interface Part {
  readonly name: string;
  /** By how much the cost is divided. */
  readonly by: Pick<PortionCount['count'], 'value' | 'low' | 'high'>;
}

const WHOLE: Part = { name: 'all of it', by: { value: 1, low: 1, high: 1 } };

/**
 * A price held against what the ingredients cost, with the bounds of their prices. Money without its name is taken for
 * that of the prices; said of a dish without how much of it, it may be of all or of a portion.
 */
export function judgePrice(
  statement: Price,
  on: BeyondDish | null,
  { facts }: Pick<BeyondContext, 'facts'>,
  amounts: AmountContext,
): Verdicted {
  if (statement.scope === 'day') {
    const day = facts.dayCost;
    if (!day) return cannotSay('no price is known for a part of the day’s food');
    return priced(statement, day, null, [{ ...WHOLE, name: 'the day' }]);
  }
  if (statement.scope === 'ingredient') {
    return cannotSay('the price of one food is held against none of your prices');
  }
  if (!on) return cannotSay('which dish?');
  const { dish } = on;
  const cost = on.facts?.cost ?? null;
  if (!cost) return cannotSay(`no price is known for a part of ${dish.title}`);
  const parts = partsOf(statement, on, amounts);
  if (parts === null) return cannotSay('of how much of it?');
  if (parts.length === 0) {
    return cannotSay(`${dish.title} has no portions whose number is known`);
  }
  return priced(statement, cost, dish.id, parts);
}

/**
 * All that a said price allows: fifty cents either way of a whole number, a quarter of a half; all else is said to the
 * cent.
 * @param major minor units in one of the money
 */
export function saidPrice(statement: Price, major: number): SaidInterval {
  return saidInterval(statement, {
    spoken: false,
    half: (digit) => (digit >= 0.25 ? digit : 0.5 / major),
    about: (value) => value * 0.05,
  });
}

/** What a price may be of; null where no cost can be given for it. */
function partsOf(
  { scope }: Price,
  { dish }: BeyondDish,
  amounts: AmountContext,
): readonly Part[] | null {
  const batches = dish.batches.num / dish.batches.den;
  const counts = () =>
    batches === 0 ? [] : portionCounts(dish.recipe, amounts).map((each) => divided(each, batches));
  const wholes = batches === 1 || batches === 0 ? [WHOLE] : [WHOLE, times('one making', batches)];
  switch (scope) {
    case 'whole':
      return wholes;
    case 'half':
      return wholes.map(({ by }) => times('half', 2 * by.value));
    case 'portion':
      return countsCalled(counts(), 'portion');
    case 'slice':
      return countsCalled(counts(), 'slice');
    case 'each':
      return countsCalled(counts(), 'piece');
    case 'dish':
    case 'unknown':
      return [...wholes, ...counts()];
    case 'ingredient':
    case 'per100g':
    case 'day':
    case 'soFar':
    case 'compared':
      return null;
  }
}

const times = (name: string, by: number): Part => ({ name, by: { value: by, low: by, high: by } });

function divided({ name, count }: PortionCount, batches: number): Part {
  const { value, low, high } = count;
  return {
    name: `“${name}”`,
    by: { value: value * batches, low: low * batches, high: high * batches },
  };
}

function priced(
  statement: Price,
  cost: Cost,
  segmentId: string | null,
  parts: readonly Part[],
): Verdicted {
  const { unit } = statement;
  if (unit !== 'unknown' && unit !== cost.currency) {
    return cannotSay(`your prices are in ${cost.currency}, and this is in ${unit}`, {
      against: { kind: 'price', segmentId },
    });
  }
  return settle(
    parts.map((part) => held(statement, cost, segmentId, part)),
    'of how much?',
  );
}

function held(statement: Price, cost: Cost, segmentId: string | null, { name, by }: Part): Meaning {
  const major = 10 ** minorDecimals(cost.currency);
  const range = {
    value: settled(cost.minor / major / by.value),
    low: settled(cost.lowMinor / major / by.high),
    high: settled(cost.highMinor / major / by.low),
  };
  const print = (value: number) => `${cost.currency} ${printTo(value, 1 / major)}`;
  const said = saidPrice(statement, major);
  return meaningOf(said, statement, range, () => {
    const [low, high] = [print(range.low), print(range.high)];
    const bounds = low === high ? '' : `, ${low} to ${high}`;
    return {
      why: `by your prices ${name} costs ${print(range.value)}${bounds}`,
      called: `${name} ${print(range.value)}`,
      sayInstead: print(range.value),
      apart: (distance, above) =>
        `${print(distance)} ${above ? 'more' : 'less'} than by your prices`,
      against: { kind: 'price', segmentId },
    };
  });
}
