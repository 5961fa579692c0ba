import type { Text } from '../words/text';

/** Meat of which less is lean is never sold by its shares. */
const LEAST_LEAN = 70;

/**
 * Token behind shares of lean and of fat before a food: '93/7 turkey', 'eighty twenty beef'; null where none begin
 * there. They come to a hundred.
 */
export function leanSharesEnd(text: Text, at: number): number | null {
  const lean = wholeAt(text, at);
  if (!lean) return null;
  const stroke = text.tokens[lean.to]?.text === '/';
  const fat = wholeAt(text, stroke ? lean.to + 1 : lean.to);
  if (!fat || lean.value < LEAST_LEAN || lean.value + fat.value !== 100) return null;
  return text.food(fat.to) ? fat.to : null;
}

/** Tokens that such shares have at most: 'ninety three slash seven' has four. */
const LONGEST = 4;

/** Whether a stretch of tokens is among such shares. */
export function isLeanShare(text: Text, from: number, to: number): boolean {
  for (let at = Math.max(0, to - LONGEST); at <= from; at += 1) {
    if ((leanSharesEnd(text, at) ?? 0) >= to) return true;
  }
  return false;
}

/** A whole number below a hundred, in digits or words. */
function wholeAt({ tokens, language }: Text, at: number): { value: number; to: number } | null {
  const word = tokens[at];
  if (word?.kind === 'number')
    return /^\d{1,2}$/.test(word.text) ? { value: Number(word.text), to: at + 1 } : null;
  const { cardinals } = language.numbers;
  const tens = cardinals.get(word?.folded ?? '');
  if (tens === undefined || tens >= 100) return null;
  const one = cardinals.get(tokens[at + 1]?.folded ?? '');
  const joined = tens >= 20 && tens % 10 === 0 && one !== undefined && one > 0 && one < 10;
  return joined ? { value: tens + one, to: at + 2 } : { value: tens, to: at + 1 };
}
