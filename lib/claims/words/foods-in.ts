import type { FoodSpan } from './foods';
import type { Text } from './text';

type Foods = Pick<Text, 'food'>;

/** The foods that a stretch of tokens names, in order; one whose name goes on behind the stretch is none of it. */
export function foodsIn({ food }: Foods, from: number, to: number): FoodSpan[] {
  const found: FoodSpan[] = [];
  for (let at = Math.max(0, from); at < to;) {
    const next = food(at);
    if (next && next.to <= to) found.push(next);
    at = next ? next.to : at + 1;
  }
  return found;
}

/** The food whose name ends right before a token and begins in the stretch before it: the longest such name. */
export function foodAtEnd({ food }: Foods, from: number, end: number): FoodSpan | null {
  for (let at = Math.max(0, from); at < end; at += 1) {
    const found = food(at);
    if (found?.to === end) return found;
  }
  return null;
}
