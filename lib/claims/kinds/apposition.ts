import type { Mark } from '../words/marks';
import type { Text } from '../words/text';

/** Tokens of the food that is told more of. */
const LONGEST_FOOD = 4;

/** '200 grams of yogurt, the full fat one,': which kind of that food, and no other dish. */
export function isApposition(
  text: Text,
  { from, role }: Mark<'scope'>,
  ends: ReadonlySet<number>,
): boolean {
  if (role.scope !== 'compared' || text.tokens[from - 1]?.text !== ',') return false;
  for (let at = from - 1; at >= from - LONGEST_FOOD - 1; at -= 1) {
    const food = text.food(at);
    if (food?.to === from - 1 && (ends.has(food.to) || ends.has(at))) return true;
  }
  return ends.has(from - 1) && text.marks.before('noun', from - 1) === undefined;
}
