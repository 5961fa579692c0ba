import { asksToDo } from './asks-to-do';
import type { Row } from './text-rows';
import { HEAT_WORDS, PLANNED_TIME } from './words';

const DEGREE = String.raw`(?:°|º|˚|degrees?\b|deg\b)`;
const AMONG = String.raw`(?:\s*(?:-|–|to)\s*\d{1,3})?`;
/** "180 °C", "375F", "gas mark 4", "200 fan", "160 degrees". */
const HEAT = new RegExp(
  String.raw`(?<![\d.,/])\d{2,3}${AMONG}\s*(?:${DEGREE}\s*(?:[cf]\b|celsius|fahrenheit)?|[cf]\b(?!\s*\|)|(?=\s*fan\b))|\bgas(?: mark)? \d{1,2}\b`,
  'g',
);
/** "22 min", "20 + 12 min", "25-30 minutes", "half an hour". */
const TIME =
  /\b(?:half |quarter of )?an hour(?: and a half)?\b|(?<![\d.,/])\d{1,3}(?:\s*(?:-|–|to|\+|\/)\s*\d{1,3})*\s*-?\s*(?:seconds?|secs?|minutes?|mins?|m|hours?|hrs?|h)\b/g;
/** An amount of something: such a line is of a food. */
const OF_FOOD =
  /\d\s*(?:g|kg|mg|ml|cl|l|oz|lbs?|grams?|cups?|tbsps?|tsps?|tablespoons?|teaspoons?|tins?|cans?)\b/;
/** Numbers of nutrients in short: "36P | 32C | 15F". */
const SHORT_NUMBERS = /\d\s*p\b.*\d\s*c\b|\d\s*c\b.*\d\s*p\b/;
/** Behind these stands how it should look, or what it was before. */
const UNTIL = /\b(?:until|till|til|from|or)\b.*$/;
const LONGEST = 160;

/**
 * What a line is that says how hot or how long and names no food: a `step` of the method, or a `time` that a dish is
 * said to take; null for any other. An amount with a temperature beside it ("200 ml water at 40 °C") stays one.
 * @example heatLine(rowOf('175 °C, 22 min')) // 'step'; of 'Prep time: 10 min' 'time'; of 'Oven chips, 200 g' null
 */
export function heatLine(row: Pick<Row, 'body' | 'folded'>): 'step' | 'time' | null {
  const { folded } = row;
  if (folded.length > LONGEST || !/\d/.test(folded) || SHORT_NUMBERS.test(folded)) return null;
  const noHeat = folded.replace(HEAT, ' ');
  const bare = noHeat.replace(TIME, ' ');
  if (bare === folded) return null;
  if (bare !== noHeat && PLANNED_TIME.test(bare)) return 'time';
  const firstWord = /^[^a-z]*([a-z-]+)/.exec(folded)?.[1] ?? '';
  if (asksToDo(row) && !firstWord.endsWith('ed')) return 'step';
  if (OF_FOOD.test(bare)) return null;
  const rest = bare.replace(UNTIL, ' ').match(/[\p{L}-]*\p{L}/gu) ?? [];
  if (rest.some((word) => !HEAT_WORDS.has(word))) return null;
  return noHeat !== folded || rest.length > 0 ? 'step' : 'time';
}
