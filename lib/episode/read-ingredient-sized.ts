import Fraction from 'fraction.js';
import {
  massOf,
  NOTHING,
  skipDash,
  unitOf,
  type Range,
  type SaidMass,
  type Single,
} from '#lib/episode/read-ingredient-amount-parts';
import { numberAt, rangeAt, remark } from '#lib/episode/read-ingredient-number';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt, type UnitRead } from '#lib/episode/read-ingredient-unit';
import { isVolumeUnit } from '#lib/units/units';

/** A count of things whose weight each is written: '2 x 400 g tins', 'a 400 g tin', '2 (400 g) tins'. */
export function sizedAt(
  tokens: readonly Token[],
  start: number,
  at: number,
  count: Range,
  bracketed: ReadonlyMap<number, SaidMass>,
): Single | null {
  const bracket = bracketed.get(at);
  const cross = /^[x×*]$/.test(tokens[at]?.folded ?? '');
  const place = cross ? at + 1 : at;
  const size = bracket ? null : numberAt(tokens, place);
  if (bracket) return sizedThing(tokens, at, count, bracket);
  if (!size || tokens[place]?.kind !== 'number' || at <= start) return null;
  const range = rangeAt(tokens, place) ?? size;
  const unit = unitAt(tokens, range.next);
  if (unit?.kind === 'length') {
    // 'a 2 inch piece': how long it is goes into the note.
    const thing = unitAt(tokens, skipDash(tokens, unit.next));
    if (cross || thing?.kind !== 'piece') return null;
    return {
      ...NOTHING,
      ...count,
      unit: 'piece',
      measure: thing.measure,
      aside: tokens.slice(place, unit.next),
      next: thing.next,
    };
  }
  if (unit?.kind !== 'unit' || range.fault || !range.low || !range.high) return null;
  const mass = massOf(range, unit);
  const volume = isVolumeUnit(unit.unit);
  if (!mass && !volume) return null;
  const thing = unitAt(tokens, skipDash(tokens, unit.next));
  const counted = thing?.kind === 'piece' || thing?.kind === 'pack';
  if (!cross && !counted) return null;
  const sized = sizedThing(tokens, skipDash(tokens, unit.next), count, mass);
  if (volume) return { ...sized, aside: [...tokens.slice(place, unit.next), ...sized.aside] };
  if (counted || !count.low || !count.high) return sized;
  // '2 x 150 g haddock': no thing is counted, so that it is an amount in grams, unless one follows the food.
  return sized;
}

function sizedThing(
  tokens: readonly Token[],
  at: number,
  count: Range,
  each: SaidMass | null,
): Single {
  const thing = unitAt(tokens, at);
  if (thing && (thing.kind === 'piece' || thing.kind === 'pack' || thing.kind === 'size')) {
    const aside = thing.modifiers;
    return { ...NOTHING, ...count, ...unitOf(thing), each, aside, next: thing.next };
  }
  return { ...NOTHING, ...count, unit: 'piece', measure: null, each, next: at };
}

/** '400 g tin of …' is one tin of 400 g; '400 g tins' does not say how many. */
export function packOf(
  tokens: readonly Token[],
  range: Range,
  unit: UnitRead & { kind: 'unit' },
  thing: UnitRead & { kind: 'piece' | 'pack' | 'size' },
): Single {
  const word = tokens[thing.next - 1]?.folded ?? '';
  const several = word !== thing.measure && word.endsWith('s') && word !== 'pkgs';
  const mass = massOf(range, { ...unit, num: 1, den: 1 });
  const one = new Fraction(1);
  const base = { ...NOTHING, unit: 'pack' as const, measure: thing.measure, next: thing.next };
  if (!mass) return { ...base, low: one, high: one, aside: tokens.slice(unit.next - 2, unit.next) };
  if (!several) return { ...base, low: one, high: one, each: mass };
  const fault = remark(
    'no-number',
    `How many ${word} is not written. Write it as 2 x 400 g ${word}.`,
    { measure: word },
  );
  return { ...base, low: null, high: null, faults: [fault] };
}
