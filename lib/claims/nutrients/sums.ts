import { partName } from './part-name';
import { isOpen } from '../numbers/open-number';
import { foodAtEnd, foodsIn } from '../words/foods-in';
import type { Quantity, Said } from '../numbers/quantity';
import { isDish } from '../words/dish-word';
import type { Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Tokens from the first part to what they come to; parts at most; and what rounding of each may come to. */
const REACH = 50;
const MOST_PARTS = 6;
const ROUNDED = 1;
/** Least sum that is none by chance. */
const LEAST = 60;
/** The same where a word says that it was worked out. */
const LEAST_SO = 20;

/**
 * Numbers that count nothing by their own words, and come to one that does: 'patty is 190, bun 140, cheese 80, sauce
 * 50, so 460 calories for the burger'. Each is of the food before it.
 */
export function sayParts(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((sum, index) => {
    const { said, killed, low, high } = sum;
    if (said?.kind !== 'nutrient' || killed !== null || low !== high) return;
    if (low < (isConcluded(text, sum) ? LEAST_SO : LEAST)) return;
    if (said.unit !== 'kcal' && said.unit !== 'g') return;
    const parts: Quantity[] = [];
    let left = low;
    for (let at = index - 1; at >= 0 && parts.length < MOST_PARTS; at -= 1) {
      const part = quantities[at];
      if (!part || sum.begin - part.end > REACH || !isPart(text, part, said)) break;
      parts.unshift(part);
      left -= part.low;
      if (parts.length >= 2 && Math.abs(left) <= ROUNDED) sayEach(text, parts, said);
      if (left <= 0) break;
    }
  });
}

function isPart(text: Text, part: Quantity, sum: Said): boolean {
  if (part.low !== part.high || part.low <= 0) return false;
  const same = part.said?.kind === 'nutrient' && part.said.nutrient === sum.nutrient;
  if ((same || isGramsOfFood(text, part, sum)) && part.killed === null) return true;
  return isOpen(text, part) || isBehindFood(text, part);
}

/** 'so thirty six grams of protein': what was said before comes to it. */
const isConcluded = ({ marks }: Text, { begin }: Quantity) =>
  (marks.before('so', begin) ?? marks.before('so', marks.before('copula', begin)?.from ?? -1)) !==
  undefined;

/** 'two eggs, that's twelve grams': of what is in them, and none of what they weigh. */
function isGramsOfFood(text: Text, { said, begin }: Quantity, sum: Said): boolean {
  const grams = said?.kind === 'amount' && said.unit === 'g' && sum.unit === 'g';
  return grams && said.food !== undefined && text.marks.before('which', begin) !== undefined;
}

/** 'beans one twenty rice two hundred': a bare number right behind a food, whatever food follows. */
function isBehindFood(
  text: Text,
  { begin, unit, noun, said, killed, fraction }: Quantity,
): boolean {
  if (unit || noun || said || killed !== null || fraction) return false;
  return foodAtEnd(text, begin - NEAR, begin) !== null;
}

function sayEach(text: Text, parts: readonly Quantity[], { nutrient, unit }: Said): void {
  for (const part of parts) {
    if (nutrient === undefined) continue;
    const grams = part.said?.kind === 'amount' ? part.said.food : undefined;
    const food = grams ?? foodOfPart(text, part) ?? nameOfPart(text, part);
    if (part.said !== null && grams === undefined) {
      // 'patty is 190 calories': only what they come to tells that it is no number of the dish.
      if (food !== null && part.said.scope === undefined && part.said.dish === undefined)
        part.said = { ...part.said, scope: 'ingredient', food };
      continue;
    }
    // 'the topping adds a hundred': of what, nobody can say.
    if (food === null && text.marks.before('adds', part.begin)) continue;
    part.said = {
      kind: 'nutrient',
      nutrient,
      unit,
      ...(food === null ? {} : { scope: 'ingredient' as const, food }),
    };
  }
}

function nameOfPart(text: Text, { begin }: Quantity): string | null {
  const name = partName(text, begin);
  return name !== null && isDish(text, name) ? null : name;
}

/** Tokens from a food to its number. */
const NEAR = 7;

function foodOfPart(text: Text, { begin }: Quantity): string | null {
  const food = foodsIn(text, begin - NEAR, begin).at(-1);
  if (!food || isDish(text, food.name)) return null;
  // Another number ends what is said of the food.
  const between = text.tokens.slice(food.to, begin);
  return between.some((token) => saysNumber(token, text.language)) ? null : food.name;
}
