import type { NumberWords } from '../language';
import { folded, type NumberAt } from './number-words';
import type { Token } from '../words/tokens';

/** Whether two numbers with a word between them are a range. */
export function isRange(
  link: string,
  between: boolean,
  low: number,
  second: NumberAt,
  first: NumberAt,
  words: NumberWords,
  dash: boolean,
): boolean {
  if (between) return true;
  // 'one eighty to two hundred' is a range; 'two twenty to two' is none.
  if (first.parts && !second.parts) {
    return words.to.has(link) && second.value >= 100 && second.value <= low * 2;
  }
  if (dash) return first.digits === second.digits;
  if (words.to.has(link)) return first.digits === second.digits && second.value <= low * 10;
  // 'three or four'; 'and' only behind 'between'.
  return !words.and.has(link) && second.value <= low * 2 && !second.parts;
}

/** 'four to five hundred': the first is of hundreds as well. */
export function scaledLow(
  low: number,
  second: NumberAt,
  tokens: readonly Token[],
  words: NumberWords,
): number {
  // 'between four and four fifty'
  const run = second.parts?.[0]?.value;
  if (run !== undefined && run - low >= 0 && run - low <= 1 && low >= 1) return low * 100;
  const last = folded(tokens, second.next - 1);
  const factor = words.hundred.has(last) ? 100 : words.thousand.has(last) ? 1000 : 1;
  return low < 20 && low * factor < second.value && factor > 1 && low >= 1 ? low * factor : low;
}
