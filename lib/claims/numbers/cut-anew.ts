import type { Language } from '../language';
import { MACRO_KCAL } from './macro-energy';
import { digitsValue } from './number-digits';
import { groupAt, wordsAt, type Part } from './number-words';
import type { Noun, Quantity } from './quantity';
import type { Text } from '../words/text';

/** Most words of numbers in a row that are cut anew; and ways of cutting that are tried. */
const LONGEST = 14;
const MOST_WAYS = 400;
/** What a row of a dish or a day may say, and how far its energy may be from that of its macronutrients. */
const ENERGY = [60, 4000] as const;
const MOST_GRAMS = 300;
const FAR = 0.2;

/**
 * Numbers said one after the other without a pause, cut so that each noun has one: 'four eighty five thirty nine fifty
 * two thirteen calories protein carbs fat' are 485, 39, 52 and 13, as no other cut has the energy that its
 * macronutrients come to. Null where the numbers are no such row; empty where nobody can say.
 */
export function cutAnew(
  { tokens, language, spoken }: Text,
  numbers: readonly Quantity[],
  nouns: readonly Noun[],
): readonly Part[] | null {
  const [first, last] = [numbers[0], numbers.at(-1)];
  if (!first || !last || last.to - first.from > LONGEST || nouns.length < 3) return null;
  const alone = numbers.every(
    ({ digits, unit, fraction, to }, index) =>
      (!digits || spoken) &&
      !fraction &&
      (unit === null || index === numbers.length - 1) &&
      (index === numbers.length - 1 || numbers[index + 1]?.from === to),
  );
  if (!alone) return null;
  const ways = cuts(tokens, first.from, last.to, nouns.length, language).filter((way) =>
    way.every(({ value }, index) => isPlausible(value, nouns[index])),
  );
  if (ways.length === 1) return ways[0] ?? [];
  const ranked = ways
    .map((way) => ({ way, far: farOff(way, nouns) }))
    .filter(({ far }) => far <= FAR)
    .sort((a, b) => a.far - b.far);
  const [best, next] = ranked;
  return best && (!next || next.far > 2 * best.far + FAR / 4) ? best.way : [];
}

/** All ways to cut a stretch of words into so many numbers. */
function cuts(
  tokens: Text['tokens'],
  from: number,
  to: number,
  count: number,
  language: Language,
): Part[][] {
  const found: Part[][] = [];
  const go = (at: number, way: readonly Part[]) => {
    if (found.length >= MOST_WAYS) return;
    if (at === to && way.length === count) found.push([...way]);
    if (at >= to || way.length >= count) return;
    for (const { value, next } of readings(tokens, at, language))
      if (next <= to) go(next, [...way, { value, from: at, next }]);
  };
  go(from, []);
  return found;
}

/** Every number that may begin at a token: 'four eighty five' is 4, 480 and 485. */
function readings(tokens: Text['tokens'], at: number, { numbers }: Language) {
  const digits = tokens[at]?.kind === 'number' ? digitsValue(tokens[at].text) : null;
  if (digits !== null) {
    const behind = tokens[at + 1]?.text ?? '';
    const two = digits > 0 && digits < 40 && /^\d\d$/.test(behind);
    const alone = { value: digits, next: at + 1 };
    return two ? [alone, { value: digits * 100 + Number(behind), next: at + 2 }] : [alone];
  }
  const group = groupAt(tokens, at, numbers);
  const single = numbers.cardinals.get(tokens[at]?.folded ?? '');
  const whole = wordsAt(tokens, at, numbers);
  const all = [
    single === undefined ? null : { value: single, next: at + 1 },
    group,
    whole && { value: whole.value, next: whole.next },
    group && shorter(tokens, group, numbers),
    group && longer(tokens, group, numbers),
  ].filter((one) => one !== null);
  return all.filter(({ value, next }, index) =>
    all.every((other, before) => before >= index || other.next !== next || other.value !== value),
  );
}

/** 'four eighty' of 'four eighty five'. */
function shorter(
  tokens: Text['tokens'],
  { value, next }: { readonly value: number; readonly next: number },
  numbers: Language['numbers'],
) {
  const tens = numbers.cardinals.get(tokens[next]?.folded ?? '') ?? 0;
  return value < 40 && tens >= 10 ? { value: value * 100 + tens, next: next + 1 } : null;
}

/** 'four eighty five' where a reading stops short of the five. */
function longer(
  tokens: Text['tokens'],
  { value, next }: { readonly value: number; readonly next: number },
  numbers: Language['numbers'],
) {
  const second = groupAt(tokens, next, numbers);
  return value < 40 && second && second.value >= 10
    ? { value: value * 100 + second.value, next: second.next }
    : null;
}

function isPlausible(value: number, noun: Noun | undefined): boolean {
  if (noun?.nutrient === 'energyKcal') return value >= ENERGY[0] && value <= ENERGY[1];
  return value <= MOST_GRAMS;
}

/** By which share the energy is off that of the macronutrients; infinite where not all are said. */
function farOff(way: readonly Part[], nouns: readonly Noun[]): number {
  const of = (nutrient: Noun['nutrient']) =>
    way[nouns.findIndex((noun) => noun.nutrient === nutrient)]?.value;
  const energy = of('energyKcal');
  let sum = 0;
  for (const [nutrient, factor] of Object.entries(MACRO_KCAL)) {
    const grams = of(nutrient as Noun['nutrient']);
    if (grams === undefined) return Infinity;
    sum += grams * factor;
  }
  return energy === undefined ? Infinity : Math.abs(sum - energy) / energy;
}
