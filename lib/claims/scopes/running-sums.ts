import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** By which share a sum may be off, as its parts are rounded; and what a sum has at least, by its unit. */
const ROUNDED = 0.01;
const LEAST: Readonly<Record<string, number>> = { kcal: 500, g: 40 };
/** Numbers before a sum that are looked at. */
const MOST = 48;
/** Tokens from the word that concludes to the sum. */
const CONCLUDED = 12;

/**
 * What several meals or dishes come to is of the day up to now: 'breakfast is 520 calories, then the taco bowl that is
 * 610, so we are sitting at 1,130'. Only behind a word that concludes, and where two different dishes or meals were
 * said.
 */
export function sayRunningSums(text: Text, quantities: readonly Quantity[]): void {
  let counted: Quantity[] = [];
  for (const quantity of quantities) {
    const { said, killed } = quantity;
    if (said?.kind !== 'nutrient' || killed !== null) continue;
    if (counted.length > MOST) counted = counted.slice(-MOST / 2);
    if (isSum(text, quantity, counted)) {
      const { dish: _, food: __, ...rest } = said;
      quantity.said = { ...rest, scope: 'soFar' };
    } else if (said.scope === undefined || said.scope === 'ingredient') counted.push(quantity);
  }
}

function isSum(text: Text, quantity: Quantity, counted: readonly Quantity[]): boolean {
  const { said, low, high, begin } = quantity;
  const least = LEAST[said?.unit ?? ''];
  if (least === undefined || low !== high || low < least || said?.scope !== undefined) return false;
  if (!text.marks.lastIn('so', begin - CONCLUDED, begin) || isOfDay(text, quantity)) return false;
  const same = counted.filter(({ said: other }) => other?.nutrient === said?.nutrient);
  let sum = 0;
  for (let at = same.length - 1; at >= 0; at -= 1) {
    sum += same[at]?.low ?? 0;
    const parts = same.slice(at);
    if (parts.length >= 2 && Math.abs(sum - low) <= ROUNDED * low) return areApart(text, parts);
  }
  return false;
}

/** Tokens around a sum in which the whole day is said: 'so the day is 1,700'. */
const DAY = 8;

function isOfDay({ marks }: Text, { begin, end }: Quantity): boolean {
  for (let at = Math.max(0, begin - DAY); at < end + DAY; at += 1)
    if (marks.at('scope', at)?.role.scope === 'day') return true;
  return false;
}

/** Whether parts are of different dishes or meals. */
function areApart({ marks }: Text, parts: readonly Quantity[]): boolean {
  const names = parts.map(({ said, begin }) => {
    const meal = marks.lastIn('meal', begin - CONCLUDED * 2, begin)?.role.meal;
    return said?.dish ?? meal;
  });
  return new Set(names).size > 1;
}
