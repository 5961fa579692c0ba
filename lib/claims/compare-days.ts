import { lastBefore } from './context';
import type { Quantity } from './quantity';
import type { Text } from './text';

/** Tokens from what another day had to what this one has, and from the words for that day to its number. */
const NEAR = 30;
const DAY = 9;
/** Numbers between them. */
const MOST = 4;

/**
 * What another day or another way of making it had is a comparison where this one has its own number beside it: 'last
 * time it was seven hundred, now it is five forty calories'. Alone it says nothing of this dish.
 */
export function compareDays(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    if (!isOfOtherDay(text, quantity)) return;
    const now = quantities
      .slice(index + 1, index + 1 + MOST)
      .find((next) => next.killed === null && next.noun !== null && fits(quantity, next));
    if (!now || now.begin - quantity.end > NEAR || !leadsBack(text, quantity.end, now.begin))
      return;
    quantity.killed = null;
    quantity.noun ??= now.noun;
    quantity.against = 'itsOwn';
  });
}

function isOfOtherDay(text: Text, { killed, unit, noun, begin, low }: Quantity): boolean {
  if (killed !== null && killed !== 'said before') return killed === 'of another day';
  if (unit !== null || noun !== null || low < 10) return false;
  const mark = lastBefore(text, begin, 'otherDay', DAY);
  if (!mark) return false;
  // 'last time this lasagne was'
  const { tokens, marks, language } = text;
  const pointer = language.numbers.pointers.has(tokens[mark.to]?.folded ?? '');
  const named = pointer && !marks.at('copula', mark.to + 1) && !marks.at('now', mark.to);
  return !leadsBack(text, named ? mark.to + 1 : mark.to, begin);
}

const fits = ({ noun, unit }: Quantity, next: Quantity) =>
  noun === null ? unit === null || unit.of === 'mass' : noun.nutrient === next.noun?.nutrient;

/** Whether words between lead back to this dish: 'now', 'this one'. */
function leadsBack({ marks, tokens, language }: Text, from: number, to: number): boolean {
  if (marks.firstIn('now', from, to)) return true;
  for (let at = from; at < to; at += 1) {
    const subject = language.claims.subjects.has(tokens[at]?.folded ?? '');
    if (subject && language.numbers.pointers.has(tokens[at]?.folded ?? '')) return true;
  }
  return false;
}
