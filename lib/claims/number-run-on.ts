import type { NumberWords } from './language';
import { folded, groupAt, plain, type NumberAt } from './number-words';
import type { Token } from './tokens';

/** First groups up to here are run on to hundreds: 'thirty-nine fifty', never 'forty twelve'. */
const MOST_GROUP = 39;

/** Two groups run on: 'six forty' is 640, or two numbers; 'one oh five' is 105. */
export function runOn(
  tokens: readonly Token[],
  at: number,
  first: { readonly value: number; readonly next: number },
  words: NumberWords,
): NumberAt {
  const alone = plain(first.value, first.next);
  if (first.value < 1 || first.value > MOST_GROUP) return alone;
  const nought = words.nought.has(folded(tokens, first.next));
  const second = runOnGroup(tokens, nought ? first.next + 1 : first.next, words);
  if (!second || (nought ? second.value > 9 : second.value < 10)) return alone;
  if (words.hundred.has(folded(tokens, second.next))) return alone;
  if (words.thousand.has(folded(tokens, second.next))) return alone;
  const joined = plain(first.value * 100 + second.value, second.next);
  return nought
    ? joined
    : {
        ...joined,
        money: first.value + second.value / 100,
        parts: [
          { value: first.value, from: at, next: first.next },
          { value: second.value, from: first.next, next: second.next },
        ],
      };
}

/**
 * The group that is run on. Its ones may begin the next number: 'one eighty one sixty' are 180 and 160, 'two twenty
 * two hundred' 220 and 200.
 */
function runOnGroup(
  tokens: readonly Token[],
  at: number,
  words: NumberWords,
): { readonly value: number; readonly next: number } | null {
  const group = groupAt(tokens, at, words);
  if (!group || group.next - at !== 2) return group;
  const after = folded(tokens, group.next);
  const goesOn = words.hundred.has(after) || (words.cardinals.get(after) ?? 0) >= 20;
  return goesOn ? { value: words.cardinals.get(folded(tokens, at)) ?? 0, next: at + 1 } : group;
}
