import type { Food, FoodVersion } from '#lib/foods/food';
import { amountRange } from '#lib/foods/label-column';
import { cellInterval, servingInterval } from '#lib/foods/label-rounding';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { STATE_WORDS } from '#lib/foods/state-words';
import { scaled, type Interval } from '#lib/units/interval';
import { printTo, settled } from '#lib/units/print';

/** A nutrient in which a label and its second witness disagree beyond the bounds of both, per 100 g. */
export interface Disagreement {
  readonly nutrient: Nutrient;
  readonly label: Interval;
  readonly witness: Interval;
  /** How many times the witness's value the label's is; null where either may be 0. */
  readonly factor: number | null;
  /** Further apart than a fifth of the witness's value: no two packs of one food differ so. */
  readonly far: boolean;
  /** "protein 2.4 g where the table has 23.5 g: a tenth" */
  readonly words: string;
}

export type SecondWitness =
  | { readonly compared: true; readonly disagreements: readonly Disagreement[] }
  | { readonly compared: false; readonly why: string };

/** What a label states and a table has. */
const COMPARED: readonly Nutrient[] = [
  'energyKcal',
  'protein',
  'fat',
  'saturated',
  'carbohydrate',
  'sugars',
  'fibre',
  'cholesterol',
  'sodium',
];

/**
 * What two foods of one name may differ by and still be the same: a fifth, as a correct label may miss an
 * analysis (21 CFR 101.9(g)), and half a gram, or as much in the other units (common practice, no source).
 */
const USUAL_SHARE = 0.2;
const USUAL_LEAST: Partial<Readonly<Record<string, number>>> = { g: 0.5, mg: 5, kcal: 5 };

/**
 * Holds a label food against the reference food that it names as its second witness, per 100 g through the
 * label's serving, each nutrient by what the printed digits of both stand for. Where the two share no amount,
 * one was misread, or they are not the same food; the far ones come first, by their factor.
 * Carbohydrate is compared on one basis, by the fibre of the side that states it as total. Not compared where the
 * states differ (raw beside cooked) or the label's serving has no grams.
 * @example secondWitness(yogurt, table) // "protein 1 g where the table has 10.19 g: a tenth"
 */
export function secondWitness(label: Food, witness: Food): SecondWitness {
  const [own, other] = [label.version, witness.version];
  if (own.state !== other.state) {
    const why = `the label is ${STATE_WORDS[own.state]} and ${witness.name} is ${STATE_WORDS[other.state]}`;
    return { compared: false, why };
  }
  if (hundredth(own) === null || hundredth(other) === null) {
    return { compared: false, why: 'there are no grams to compare 100 g by' };
  }
  const disagreements = COMPARED.flatMap((nutrient) => {
    const [a, b] =
      nutrient === 'carbohydrate' && own.carbBasis !== other.carbBasis
        ? [available(own), available(other)]
        : [per100g(own, nutrient), per100g(other, nutrient)];
    if (!a || !b || (settled(a.low) <= settled(b.high) && settled(b.low) <= settled(a.high))) {
      return [];
    }
    return [disagreement(nutrient, a, b)];
  });
  const order = (each: Disagreement) =>
    each.factor === null ? Infinity : Math.abs(Math.log(each.factor));
  return {
    compared: true,
    disagreements: disagreements.sort(
      (a, b) => Number(b.far) - Number(a.far) || order(b) - order(a) || 0,
    ),
  };
}

function disagreement(nutrient: Nutrient, label: Interval, witness: Interval): Disagreement {
  const { unit, label: name } = NUTRIENTS[nutrient];
  const apart = label.low > witness.high ? label.low - witness.high : witness.low - label.high;
  const usual = Math.max(USUAL_SHARE * witness.value, USUAL_LEAST[unit] ?? 0);
  const factor = witness.low > 0 && label.low > 0 ? label.value / witness.value : null;
  const words = `${name} ${amountRange(label, unit)} where the table has ${amountRange(witness, unit)}`;
  const times = factor === null ? '' : `: ${factorWords(factor)}`;
  return { nutrient, label, witness, factor, far: apart > usual, words: words + times };
}

const SHARES: readonly (readonly [number, string])[] = [
  [0.01, 'a hundredth'],
  [0.1, 'a tenth'],
  [0.25, 'a quarter'],
  [1 / 3, 'a third'],
  [0.5, 'half'],
  [2, 'twice as much'],
];

/** `factorWords(0.098)` → `'a tenth'`; `factorWords(9.8)` → `'10 times as much'`; within 5 % of a plain share. */
function factorWords(factor: number): string {
  const plain = SHARES.find(([share]) => Math.abs(factor / share - 1) <= 0.05);
  if (plain) return plain[1];
  if (factor >= 5) return `${printTo(factor, 1)} times as much`;
  if (factor >= 1) return `${printTo(factor, 0.1)} times as much`;
  if (factor >= 0.01) return `${printTo(factor * 100, 1)} % of it`;
  return 'less than a hundredth';
}

/** What turns an amount per basis into one per 100 g; null where the basis has no grams. */
function hundredth(version: FoodVersion): Interval | null {
  if (version.basis === 'per100g') return { low: 1, value: 1, high: 1 };
  const serving = version.basis === 'serving' ? servingInterval(version) : null;
  if (!serving || serving.low <= 0) return null;
  const each = (mg: number) => 100_000 / mg;
  return { low: each(serving.high), value: each(serving.value), high: each(serving.low) };
}

/** Salt is sodium times 2.5 (Regulation 1169/2011 Annex I). */
const SODIUM_MG_PER_SALT_G = 400;

function per100g(version: FoodVersion, nutrient: Nutrient): Interval | null {
  const by = hundredth(version);
  const stated =
    cellInterval(version, nutrient) ?? (nutrient === 'sodium' ? fromSalt(version) : null);
  if (!by || !stated) return null;
  return {
    low: stated.low * by.low,
    value: stated.value * by.value,
    high: stated.high * by.high,
  };
}

function fromSalt(version: FoodVersion): Interval | null {
  const salt = cellInterval(version, 'salt');
  return salt && scaled(salt, SODIUM_MG_PER_SALT_G);
}

/** Carbohydrate without fibre; null where it is stated with it and the fibre is not known. */
function available(version: FoodVersion): Interval | null {
  const carbohydrate = per100g(version, 'carbohydrate');
  if (!carbohydrate || version.carbBasis === 'available') return carbohydrate;
  const fibre = per100g(version, 'fibre');
  if (!fibre) return null;
  return {
    low: Math.max(0, carbohydrate.low - fibre.high),
    value: Math.max(0, carbohydrate.value - fibre.value),
    high: Math.max(0, carbohydrate.high - fibre.low),
  };
}
