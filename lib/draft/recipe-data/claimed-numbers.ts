import { readIsoDuration } from '#lib/units/iso-duration';
import { cleanLine } from './clean-words';
import { property, valuesOf, wordsOf, type JsonObject } from './recipe-nodes';

/** What could not be taken over of a recipe's numbers: where, its words, and why. */
export interface NotClaimed {
  readonly at: number;
  readonly words: string;
  readonly message: string;
}

/** Numbers that a recipe states of itself, as a text in which they are judged. */
export interface ClaimedNumbers {
  /** Lines of words; none where it states nothing. */
  readonly lines: readonly string[];
  readonly left: readonly NotClaimed[];
}

/** Properties of NutritionInformation (schema.org 30.0), the unit where none is written, and the word behind it. */
const PROPERTIES = [
  ['calories', 'calories', ''],
  ['proteinContent', 'g', 'protein'],
  ['fatContent', 'g', 'fat'],
  ['saturatedFatContent', 'g', 'saturated fat'],
  ['transFatContent', 'g', 'trans fat'],
  ['carbohydrateContent', 'g', 'carbohydrate'],
  ['fiberContent', 'g', 'fiber'],
  ['sugarContent', 'g', 'sugar'],
  ['sodiumContent', 'mg', 'sodium'],
  ['cholesterolContent', 'mg', 'cholesterol'],
] as const;

const AMOUNT = /^(\d{1,6}(?:,\d{3})*(?:[.,]\d{1,3})?)\s*([a-z]*)/i;
const UNITS: Readonly<Record<string, string>> = {
  calories: 'calories',
  calorie: 'calories',
  kilocalories: 'calories',
  kcal: 'calories',
  cal: 'calories',
  kj: 'kJ',
  kilojoules: 'kJ',
  g: 'g',
  gram: 'g',
  grams: 'g',
  mg: 'mg',
  milligram: 'mg',
  milligrams: 'mg',
};

/** The longest that a recipe is said to take: a week, in seconds. */
const LONGEST_S = 604_800;

/**
 * The nutrition and the time to the plate that a recipe states, in words whose numbers are held against its ingredients
 * and its day: they are statements and no facts.
 * @example of 240 calories and 9 g of fat: ['Per portion: 240 calories, 9 g fat.']
 */
export function claimedNumbers(recipe: JsonObject): ClaimedNumbers {
  const left: NotClaimed[] = [];
  const lines = [...nutritionLine(recipe, left), ...readyLine(recipe, left)];
  return { lines, left: [...left, ...otherTimes(recipe), ...diets(recipe)] };
}

function nutritionLine(recipe: JsonObject, left: NotClaimed[]): string[] {
  const [nutrition, ...more] = valuesOf(recipe, 'nutrition');
  for (const { at } of more)
    left.push({ at, words: '', message: 'A second nutrition: only the first is read.' });
  if (!nutrition) return [];
  if (nutrition.kind !== 'object') {
    const message = 'Nutrition is an object with a value for each nutrient; this is none.';
    left.push({ at: nutrition.at, words: wordsOf(nutrition) ?? '', message });
    return [];
  }
  const amounts = PROPERTIES.flatMap(([name, unit, noun]) => {
    const value = property(nutrition, name);
    if (!value) return [];
    const words = cleanLine(wordsOf(value) ?? '');
    const amount = amountIn(words, unit);
    if (amount !== null) return [noun === '' ? amount : `${amount} ${noun}`];
    const message = `${name} is no amount such as “9 g”.`;
    left.push({ at: value.at, words, message });
    return [];
  });
  return amounts.length === 0 ? [] : [`Per portion: ${amounts.join(', ')}.`];
}

/** `'9 g'` of `'9 grams fat'`, `'9.5 g'` of `'9,5'`; null where it is no amount in a unit of its kind. */
function amountIn(words: string, unit: string): string | null {
  const [, digits, name = ''] = AMOUNT.exec(words) ?? [];
  if (digits === undefined) return null;
  const written = UNITS[name.toLowerCase()] ?? (name === '' ? unit : null);
  const isEnergy = unit === 'calories';
  if (written === null || isEnergy !== (written === 'calories' || written === 'kJ')) return null;
  return `${digits.replace(/^(\d+),(\d{1,2})$/, '$1.$2')} ${written}`;
}

function readyLine(recipe: JsonObject, left: NotClaimed[]): string[] {
  const [value] = valuesOf(recipe, 'totalTime');
  if (!value) return [];
  const words = cleanLine(wordsOf(value) ?? '');
  const read = readIsoDuration(words);
  const seconds = read.kind === 'seconds' ? read.seconds : 0;
  if (seconds > 0 && seconds <= LONGEST_S) {
    const minutes = Math.max(1, Math.round(seconds / 60));
    return [`Ready in ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}.`];
  }
  left.push({ at: value.at, words, message: DURATION[read.kind] });
  return [];
}

const DURATION = {
  seconds: 'No time that a dish can take.',
  calendar: 'It counts in months or years: “P45M” is 45 months, and 45 minutes are “PT45M”.',
  none: 'No duration as ISO 8601 writes it, such as “PT1H30M”.',
} as const;

function otherTimes(recipe: JsonObject): NotClaimed[] {
  return ['prepTime', 'cookTime', 'performTime'].flatMap((name) =>
    valuesOf(recipe, name).map((value) => {
      const message = `${name} is of no one step: how long a step takes is said at the step.`;
      return { at: value.at, words: cleanLine(wordsOf(value) ?? ''), message };
    }),
  );
}

function diets(recipe: JsonObject): NotClaimed[] {
  return valuesOf(recipe, 'suitableForDiet').map((value) => {
    const message = 'Whether a dish suits a diet is never taken over: say it yourself.';
    return { at: value.at, words: cleanLine(wordsOf(value) ?? ''), message };
  });
}
