import type { Quantity } from '../numbers/quantity';
import { only, type Text } from '../words/text';

/** Marks numbers that stand in a row, with nothing between them but what joins, parts and softens. */
export function markLists(text: Text, quantities: readonly Quantity[]): void {
  let last: Quantity | undefined;
  for (const quantity of quantities) {
    if (last && last.said?.kind === quantity.said?.kind && inRow(text, last, quantity)) {
      last.list = true;
      quantity.list = true;
    }
    last = quantity;
  }
}

function inRow(text: Text, last: Quantity, next: Quantity): boolean {
  const end = Math.max(last.end, last.noun && last.noun.to <= next.begin ? last.noun.to : 0);
  const begin =
    next.noun && next.noun.from >= end ? Math.min(next.begin, next.noun.from) : next.begin;
  if (begin < end || begin - end > 12) return false;
  const line = text.tokens.slice(end, begin).some(({ kind }) => kind === 'line');
  return line || only(text, end, begin, ['joiner', 'filler', 'hedge', 'scope', 'copula']);
}
