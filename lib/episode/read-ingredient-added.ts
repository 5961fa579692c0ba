import type Fraction from 'fraction.js';
import { massOf, said, scaleRange, type Single } from '#lib/episode/read-ingredient-amount-parts';
import {
  dividesRange,
  numberAt,
  outOfOrder,
  rangeAt,
  remark,
} from '#lib/episode/read-ingredient-number';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt } from '#lib/episode/read-ingredient-unit';
import type { LineUnit } from '#lib/episode/recipe-schema';
import type { Problem } from '#lib/result';
import { isMassUnit, isVolumeUnit } from '#lib/units/units';

/** How many of the second unit one of the first is, where both are of one kind and system. */
const PARTS: ReadonlyMap<string, number> = new Map([
  ['lb oz', 16],
  ['kg g', 1000],
  ['l ml', 1000],
  ['cup flOz', 8],
  ['cup tbsp', 16],
  ['cup tsp', 48],
  ['flOz tbsp', 2],
  ['flOz tsp', 6],
  ['tbsp tsp', 3],
]);

/** Adds what follows in a smaller unit ('1 lb 2 oz'), or after a plus ('2 tbsp + 1 tsp'), or a range's end. */
export function added(tokens: readonly Token[], start: number, first: Single): Single {
  const sign = tokens[first.next];
  const plus = sign && /^(?:\+|plus|and|&)$/.test(sign.folded);
  const comma = sign?.text === ',';
  const range = dividesRange(sign);
  const place = first.next + (plus || comma || range ? 1 : 0);
  const second = numberAt(tokens, place);
  if (!second || (tokens[place]?.kind !== 'number' && !plus && !range)) return first;
  const unit = unitAt(tokens, second.next);
  if (unit?.kind !== 'unit' || !isAdded(first.unit, unit.unit)) return first;
  const { low, high } = scaleRange(second, unit);
  const typed = said(tokens, start, unit.next);
  const open = (fault: Problem): Single => ({
    ...first,
    low: null,
    high: null,
    next: unit.next,
    faults: [...first.faults, fault],
  });
  if (range) {
    if (unit.unit !== first.unit) return open(twoAmounts(typed));
    if (!first.low || !low || first.low !== first.high)
      return open(second.fault ?? twoAmounts(typed));
    if (first.low.compare(low) > 0) return open(outOfOrder(typed));
    return { ...first, high: low, next: unit.next };
  }
  const factor = first.unit === unit.unit ? 1 : PARTS.get(`${first.unit} ${unit.unit}`);
  if (factor === undefined || (factor === 1 && !plus)) {
    const back = PARTS.get(`${unit.unit} ${first.unit}`);
    if (!plus || back === undefined) return plus || !comma ? open(twoAmounts(typed)) : first;
    const sum = (end: Fraction | null, more: Fraction | null) =>
      end && more ? end.add(more.mul(back)) : null;
    return added(tokens, start, {
      ...first,
      low: sum(first.low, low),
      high: sum(first.high, high),
      next: unit.next,
    });
  }
  if (second.fault) return open(second.fault);
  const sum = (end: Fraction | null, more: Fraction | null) =>
    end && more ? end.mul(factor).add(more) : null;
  return added(tokens, start, {
    ...first,
    low: sum(first.low, low),
    high: sum(first.high, high),
    unit: unit.unit,
    aside: [...first.aside, ...unit.modifiers],
    next: unit.next,
  });
}

function isAdded(first: LineUnit | null, second: LineUnit): boolean {
  if (first === null) return false;
  return (isMassUnit(first) || isVolumeUnit(first)) && (isMassUnit(second) || isVolumeUnit(second));
}

/** The remark where two amounts stand and it is not said how they go together. */
export function twoAmounts(typed: string): Problem {
  return remark(
    'two-amounts',
    `There are two amounts in “${typed}”. Write one, and the other in brackets or on a line of its own.`,
    { typed },
  );
}

/** The same amount again after a slash: '200 g/7 oz', '1 cup/150 g'. */
export function repeated(tokens: readonly Token[], first: Single): Single {
  if (tokens[first.next]?.text !== '/') return first;
  const number = rangeAt(tokens, first.next + 1);
  const unit = number && !number.fault ? unitAt(tokens, number.next) : null;
  if (!number || unit?.kind !== 'unit') return first;
  const mass = massOf(number, unit);
  const massFirst = first.unit === 'g' || first.unit === 'kg';
  return repeated(tokens, { ...first, whole: massFirst ? null : mass, next: unit.next });
}
