import type { NumberWords } from '../language';
import { folded, groupAt, plain, type NumberAt } from './number-words';
import type { Token } from '../words/tokens';

/** First groups up to here are run on to hundreds: 'thirty-nine fifty', never 'forty twelve'. */
const MOST_GROUP = 39;

/** Digits said one by one: at least and at most. */
const SPELT = [3, 4] as const;

/**
 * A number whose digits are said one by one: 'one nine four zero' is 1940. Not where somebody counts, 'one two three'.
 */
export function speltAt(tokens: readonly Token[], at: number, words: NumberWords): NumberAt | null {
  const first = words.nought.has(folded(tokens, at)) ? null : digitAt(tokens, at, words);
  if (first === null || first === 0 || words.cardinals.has(folded(tokens, at - 1))) return null;
  const digits = [first];
  for (let next = at + 1; digits.length <= SPELT[1]; next += 1) {
    const digit = digitAt(tokens, next, words);
    if (digit === null) break;
    digits.push(digit);
  }
  const end = at + digits.length;
  if (digits.length < SPELT[0] || digits.length > SPELT[1]) return null;
  if (words.nought.has(folded(tokens, end - 1)) && digits.length === SPELT[0]) return null;
  const after = folded(tokens, end);
  if (words.cardinals.has(after) || words.hundred.has(after) || words.thousand.has(after))
    return null;
  if (isCounting(digits)) return null;
  const value = Number(digits.join(''));
  // 'one oh five' of money is 1.05.
  const money = digits.length === SPELT[0] && digits[1] === 0 ? { money: value / 100 } : {};
  return { ...plain(value, end), ...money };
}

function digitAt(tokens: readonly Token[], at: number, words: NumberWords): number | null {
  const word = folded(tokens, at);
  const value = words.nought.has(word) ? 0 : words.cardinals.get(word);
  return value !== undefined && value < 10 ? value : null;
}

/** Whether each digit is the one before with one more, or one less: 'three two one'. */
export const isCounting = (digits: readonly number[]) =>
  [1, -1].some((by) =>
    digits.every((digit, index) => index === 0 || digit - (digits[index - 1] ?? 0) === by),
  );

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
  const joined = {
    ...plain(first.value * 100 + second.value, second.next),
    money: first.value + second.value / 100,
  };
  return nought
    ? joined
    : {
        ...joined,
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
