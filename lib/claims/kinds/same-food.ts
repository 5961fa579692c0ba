import { pausedFood } from './bare-measures';
import { subjectFood } from './subject-food';
import { isDish } from '../words/dish-word';
import type { Quantity } from '../numbers/quantity';
import { only, type Text } from '../words/text';

/** Grams that no one counts. */
const LEAST = 20;
const MOST = 5000;
/** Tokens from an amount to what the same food weighs when it is done. */
const REACH = 7;

const LINKS = [
  'which',
  'copula',
  'comesTo',
  'joiner',
  'small',
  'filler',
  'hedge',
  'adds',
  'so',
  'change',
  'lead',
] as const;

/**
 * What a food weighs drained, cooked or peeled: 'one block of tofu, that is two eighty drained', 'the tuna is a hundred
 * grams drained'. Without a unit they are grams, where its amount was said just before.
 */
export function sayPrepared(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    const { unit, noun, said, killed, low, high, end, begin, fraction } = quantity;
    if (said !== null || noun || killed !== null || !isPrepared(text, end)) return;
    const grams = unit?.of === 'mass';
    const bare = unit === null && !fraction && low === high && low >= LEAST && low <= MOST;
    if (!grams && !bare) return;
    const before = quantities[index - 1];
    const same = before?.killed === null && before.said?.kind === 'amount' ? before : null;
    const raw = same && isPrepared(text, same.end) ? same.end + 1 : (same?.end ?? 0);
    const near = same && begin - raw <= REACH && only(text, raw, begin, LINKS);
    const own = grams
      ? subjectFood(text, quantity)
      : pausedFood(text, quantity, before?.end ?? 0)?.name;
    const food = (near ? same.said?.food : undefined) ?? own ?? null;
    if (food === null || isDish(text, food)) return;
    quantity.said = { kind: 'amount', unit: unit?.unit ?? 'g', food };
    if (bare) quantity.unsure = true;
  });
}

/** 'drained', 'cooked', 'raw weight' with nothing behind it that would be so. */
function isPrepared({ tokens, language, food, marks }: Text, at: number): boolean {
  const word = tokens[at];
  if (word?.kind !== 'word' || !language.foods.prepared.has(word.folded)) return false;
  return food(at) === null && food(at + 1) === null && marks.at('unit', at + 1) === undefined;
}
