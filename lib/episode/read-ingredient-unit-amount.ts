import {
  NOTHING,
  scaleRange,
  skipDash,
  unitOf,
  type Range,
  type Single,
} from '#lib/episode/read-ingredient-amount-parts';
import { added, repeated } from '#lib/episode/read-ingredient-added';
import { numberAt, remark } from '#lib/episode/read-ingredient-number';
import { packOf } from '#lib/episode/read-ingredient-sized';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt, type UnitRead } from '#lib/episode/read-ingredient-unit';

/** A number with the unit that stands behind it, and what is added to it; pieces where none does. */
export function unitAmount(
  tokens: readonly Token[],
  start: number,
  at: number,
  range: Range,
): Single {
  const unit = unitAt(tokens, at);
  if (!unit)
    return { ...NOTHING, ...range, unit: 'piece', measure: null, next: skipSo(tokens, at) };
  if (unit.kind === 'unclear' || unit.kind === 'length') {
    const fault =
      unit.kind === 'length'
        ? remark(
            'length-not-amount',
            `How long it is does not say how much. Write a count or grams.`,
            {
              typed: unit.typed,
            },
          )
        : remark(
            'unit-not-known',
            `“${unit.typed}” may be more than one unit. Write tsp, tbsp or cup.`,
            {
              typed: unit.typed,
            },
          );
    const aside = tokens.slice(start, unit.next);
    return {
      ...NOTHING,
      low: null,
      high: null,
      unit: null,
      measure: null,
      next: unit.next,
      faults: [fault],
      aside,
    };
  }
  if (unit.kind !== 'unit') {
    const two = orTwo(tokens, unit, range);
    return {
      ...NOTHING,
      ...(two ?? range),
      ...unitOf(unit),
      aside: unit.modifiers,
      next: two?.next ?? unit.next,
    };
  }
  const scaled = scaleRange(range, unit);
  const thing = unitAt(tokens, skipDash(tokens, unit.next));
  if (thing?.kind === 'pack' && thing.modifiers.length === 0)
    return packOf(tokens, scaled, unit, thing);
  const before = {
    ...NOTHING,
    ...scaled,
    unit: unit.unit,
    measure: null,
    aside: unit.modifiers,
    next: unit.next,
  };
  return repeated(tokens, added(tokens, start, before));
}

/** '2 or so': said of the number, not of the food. */
function skipSo(tokens: readonly Token[], at: number): number {
  return tokens[at]?.folded === 'or' && tokens[at + 1]?.folded === 'so' ? at + 2 : at;
}

/** 'a slice or two of bread'. */
function orTwo(
  tokens: readonly Token[],
  unit: UnitRead,
  range: Range,
): (Range & { next: number }) | null {
  if (tokens[unit.next]?.folded !== 'or' || !range.low || range.low !== range.high) return null;
  const second = numberAt(tokens, unit.next + 1);
  const after = tokens[second?.next ?? 0]?.folded;
  if (!second?.low || (after !== undefined && after !== 'of')) return null;
  if (second.low.compare(range.low) <= 0) return null;
  return { low: range.low, high: second.low, next: second.next };
}
