import Fraction from 'fraction.js';
import type { AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { ReadIngredient } from '#lib/episode/read-ingredient-types';
import type { LineUnit, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { printGrams } from '#lib/units/print';
import { quantityText } from '#lib/units/read-quantity';
import { evaluate } from '#lib/units/sum-of-products';
import { MEASURE_WORDS } from '#lib/units/unit-words';
import { isMassUnit, isVolumeUnit, toMilligrams, toMillilitres } from '#lib/units/units';

/** Words that name one amount of an ingredient while another one is counted. */
export interface AmountApart {
  /** As the words have it: "120 g", "2 cloves". */
  readonly said: string;
  /** What is counted: "150 g", "3 pieces". */
  readonly counted: string;
}

/** Weights that differ by less are one: "1 lb" and 454 g, "8 oz" and 225 g (common practice, no source). */
const ONE_WEIGHT = 0.01;
/** Half a gram is what rounding to whole ones leaves. */
const HALF_GRAM_MG = 500;

/**
 * Tells where the words of an ingredient name another amount than is counted, since one was changed and the other left.
 * Null where both agree, where the words name no amount or are in doubt, where the two cannot be compared without more
 * ("1 cup" and 90 g), and where a scale was read: then the words are the plan.
 * @example amountApart({ ...line, text: '120 g cod', planned: grams(150) }, [], context) // { said: '120 g', counted: '150 g' }
 */
export function amountApart(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): AmountApart | null {
  if (isWeighed(line, weighings)) return null;
  const [part, ...others] = readIngredient(line.text);
  if (!part || others.length > 0) return null;
  const named = namedWeight(part);
  const massMg = countedMg(line, weighings, context);
  if (named && massMg !== null) {
    if (!isOtherWeight(line.text, massMg)) return null;
    return apart(part, named, `${printGrams(massMg)} g`);
  }
  if (line.planned || !line.quantity || !line.unit) return null;
  const { quantity, unit } = line;
  if (named) return apart(part, named, amountText(quantity, unit));
  if (!part.quantity || !part.unit) return null;
  const [said, counted] = [inOne(part.quantity, part.unit), inOne(quantity, unit)];
  if (said.of !== counted.of || (near(said.low, counted.low) && near(said.high, counted.high)))
    return null;
  return apart(part, null, amountText(quantity, unit));
}

/** Whether a scale was read of an ingredient before it was cooked. */
export function isWeighed({ id }: RecipeLine, weighings: readonly Weighing[]): boolean {
  return weighings.some(
    ({ kind, shares }) => kind === 'raw' && shares.some(({ lineId }) => lineId === id),
  );
}

/** Whether words name a weight of the ingredient, and none of those they name is this one. */
export function isOtherWeight(text: string, massMg: number): boolean {
  const [part, ...others] = readIngredient(text);
  const named = part && others.length === 0 ? namedWeight(part) : null;
  return named !== null && ![named, ...gramsIn(text)].some((each) => holds(each, massMg));
}

interface Weight {
  readonly lowMg: number;
  readonly highMg: number;
}

/** Grams as words name them, in milligrams. */
interface NamedGrams extends Weight {
  readonly valueMg: number;
}

/** All grams that words name, whatever of the ingredient they are: "500 g squash, 420 g peeled". */
export function gramsIn(text: string): readonly NamedGrams[] {
  return [...text.matchAll(/(?<![\d.,])(\d+(?:\.\d+)?) ?g\b/g)].map(([, digits]) => {
    const mg = Number(digits) * 1000;
    return { lowMg: mg, valueMg: mg, highMg: mg };
  });
}

/** The weight that words give the ingredient; null where they give none. */
function namedWeight({ weight, quantity, unit }: ReadIngredient): Weight | null {
  if (weight) return weight;
  if (!quantity || !unit || !isMassUnit(unit)) return null;
  const mg = ({ num, den }: { num: number; den: number }) =>
    toMilligrams(new Fraction(num).div(den), unit);
  return { lowMg: mg(quantity.low), highMg: mg(quantity.high) };
}

function countedMg(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
): number | null {
  const { massMg, sources } = lineAmount(line, weighings, context);
  return massMg && evaluate(massMg, new Map([...sources].map(([id, { value }]) => [id, value])));
}

function holds({ lowMg, highMg }: Weight, massMg: number): boolean {
  const room = Math.max(HALF_GRAM_MG, ONE_WEIGHT * massMg);
  return lowMg - room <= massMg && massMg <= highMg + room;
}

type Quantity = NonNullable<RecipeLine['quantity']>;

/** An amount in the one unit of its kind, so that 3 tsp and 1 tbsp are alike. */
function inOne({ low, high }: Quantity, unit: LineUnit) {
  const value = ({ num, den }: Quantity['low']) => {
    const amount = new Fraction(num).div(den);
    return isVolumeUnit(unit) ? toMillilitres(amount, unit) : amount.valueOf();
  };
  const of = isVolumeUnit(unit) ? 'volume' : unit;
  return { of, low: value(low), high: value(high) };
}

const near = (a: number, b: number) => Math.abs(a - b) <= ONE_WEIGHT * Math.max(a, b);

function apart(part: ReadIngredient, named: Weight | null, counted: string): AmountApart {
  const grams = named && [named.lowMg, named.highMg].map(printGrams);
  const weight = grams && `${[...new Set(grams)].join('–')} g`;
  // Words that name a weight beside a count are told by the weight, which is what differs.
  const said = part.weight && weight ? weight : part.household;
  return { said: said || (weight ?? ''), counted };
}

/** `'3 pieces'`, `'1 1/2 tbsp'`. */
function amountText(quantity: Quantity, unit: LineUnit): string {
  const words: string = Object.entries(MEASURE_WORDS).find(([name]) => name === unit)?.[1] ?? unit;
  const several = quantity.high.num > quantity.high.den && COUNTED.has(unit);
  return `${quantityText(quantity)} ${words}${several ? (unit === 'batch' ? 'es' : 's') : ''}`;
}

const COUNTED: ReadonlySet<LineUnit> = new Set([
  'piece',
  'serving',
  'pack',
  'batch',
  'portion',
  'cup',
]);
