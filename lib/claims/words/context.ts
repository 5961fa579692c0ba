import type { Marks } from './marks';
import type { Quantity } from '../numbers/quantity';
import type { Text } from './text';

type Key = Parameters<Marks['at']>[0];

/** First token of the sentence that a token is in. */
export function sentenceStart({ sentences }: Text, at: number): number {
  return sentences.starts[sentences.of[at] ?? 0] ?? 0;
}

/** Token behind the last one of the sentence that a token is in. */
export function sentenceEnd({ sentences, tokens }: Text, at: number): number {
  return sentences.starts[(sentences.of[at] ?? 0) + 1] ?? tokens.length;
}

/** The mark of a category that ends right before a quantity, with at most `gap` tokens between. */
export function markBefore<C extends Key>(
  text: Text,
  { begin, from }: Quantity,
  category: C,
  gap = 0,
) {
  const start = sentenceStart(text, from);
  for (let at = from; at >= Math.max(start, begin - gap); at -= 1) {
    if (at < from && at > begin) continue;
    const mark = text.marks.before(category, at);
    if (mark && mark.from >= start) return mark;
  }
  return undefined;
}

/** The mark of a category that begins right behind a token, with at most `gap` tokens between. */
export function markBehind<C extends Key>(text: Text, at: number, category: C, gap = 0) {
  const end = Math.min(text.tokens.length, sentenceEnd(text, Math.max(0, at - 1)));
  for (let next = at; next <= Math.min(at + gap, end - 1); next += 1) {
    const mark = text.marks.at(category, next);
    if (mark) return mark;
  }
  return undefined;
}

/** The last mark of a category in the sentence before a token, at most `reach` tokens back. */
export function lastBefore<C extends Key>(text: Text, at: number, category: C, reach = 40) {
  const start = Math.max(
    sentenceStart(text, Math.max(0, Math.min(at, text.tokens.length - 1))),
    at - reach,
  );
  return text.marks.lastIn(category, start, at);
}
