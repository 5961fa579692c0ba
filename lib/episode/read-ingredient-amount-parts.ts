import Fraction from 'fraction.js';
import type { LineUnit } from '#lib/episode/recipe-schema';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { UnitRead } from '#lib/episode/read-ingredient-unit';
import type { Problem } from '#lib/result';
import { isMassUnit, MILLIGRAMS } from '#lib/units/units';

/** A mass in milligrams as a range, and whether it was said in grams. */
export interface SaidMass {
  readonly low: Fraction;
  readonly high: Fraction;
  readonly inGrams: boolean;
}

/** An amount at the beginning of some words. */
export interface Amount {
  readonly low: Fraction | null;
  readonly high: Fraction | null;
  readonly unit: LineUnit | null;
  readonly measure: string | null;
  /** The weight of each, as in '2 x 400 g tins'. */
  readonly each: SaidMass | null;
  /** The same amount in grams after a slash: '1 cup/150 g'. */
  readonly whole: SaidMass | null;
  /** Whether it is said to be rough: 'about', '~'. */
  readonly about: boolean;
  /** Words of the amount that belong into the note: 'heaped', 'about'. */
  readonly aside: readonly Token[];
  readonly from: number;
  readonly next: number;
  readonly faults: readonly Problem[];
}

/** Both ends of an amount; null where nobody knows one. */
export interface Range {
  readonly low: Fraction | null;
  readonly high: Fraction | null;
}

/** An amount whose beginning is known to who asks for it. */
export type Single = Omit<Amount, 'from'>;

/** Of an amount without anything beside its number. */
export const NOTHING = {
  each: null,
  whole: null,
  about: false,
  aside: [] as readonly Token[],
  faults: [] as readonly Problem[],
};

/** A mass in milligrams; null for a unit of another kind. */
export function massOf(range: Range, unit: UnitRead): SaidMass | null {
  if (unit.kind !== 'unit' || !isMassUnit(unit.unit) || !range.low || !range.high) return null;
  const factor = MILLIGRAMS[unit.unit].mul(unit.num).div(unit.den);
  const inGrams = unit.unit === 'g' || unit.unit === 'kg';
  return { low: range.low.mul(factor), high: range.high.mul(factor), inGrams };
}

/** What an amount is counted in by its unit. */
export function unitOf(unit: UnitRead): Pick<Amount, 'unit' | 'measure'> {
  switch (unit.kind) {
    case 'unit':
      return { unit: unit.unit, measure: null };
    case 'pack':
      return { unit: 'pack', measure: unit.measure };
    case 'piece':
    case 'size':
      return { unit: 'piece', measure: unit.measure };
    case 'unclear':
    case 'length':
      return { unit: null, measure: null };
  }
}

/** Grams that "about" leaves open at least, and as a share: the same as of a number that somebody says. */
const ABOUT_MG = 1000;
const ABOUT_SHARE = new Fraction(1, 20);

/**
 * A mass that was said to be rough, wider on both sides; another as it is.
 * @example aboutMass of 200 g // 190 to 210 g
 */
export function aboutMass(mass: SaidMass, isAbout: boolean): SaidMass {
  if (!isAbout) return mass;
  const share = mass.low.add(mass.high).div(2).mul(ABOUT_SHARE);
  const half = share.compare(ABOUT_MG) > 0 ? share : new Fraction(ABOUT_MG);
  const low = mass.low.compare(half) > 0 ? mass.low.sub(half) : new Fraction(0);
  return { ...mass, low, high: mass.high.add(half) };
}

export function scaleRange(range: Range, unit: UnitRead & { kind: 'unit' }): Range {
  if (unit.num === 1 && unit.den === 1) return { low: range.low, high: range.high };
  const by = (end: Fraction | null) => end?.mul(unit.num).div(unit.den) ?? null;
  return { low: by(range.low), high: by(range.high) };
}

/** Behind a dash that joins: the place itself where none stands there. */
export function skipDash(tokens: readonly Token[], at: number): number {
  return tokens[at]?.text === '-' && !tokens[at]?.spaced ? at + 1 : at;
}

/** As it was typed, from one token up to, without, another. */
export function said(tokens: readonly Token[], from: number, to: number): string {
  return tokens
    .slice(from, to)
    .map(({ text }) => text)
    .join(' ');
}
