import { lastBefore } from '../words/context';
import { endWithNoun, type Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens from what another day had to what this one has, and from the words for that day to its number. */
const NEAR = 30;
const DAY = 9;
/** Numbers between them. */
const MOST = 4;

/**
 * What another day or another way of making it had is a comparison where this one has its own number beside it: 'last
 * time it was seven hundred, now it is five forty calories', 'down from 700'. Alone it says nothing of this dish.
 */
export function compareDays(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    const before = quantities[index - 1];
    const changed = quantity.killed === 'a change';
    if (changed && before && isDownFrom(before, quantity)) {
      quantity.noun ??= before.noun;
      return setAgainst(quantity);
    }
    const then = changed || isThen(text, quantity, quantities[index + 1]);
    if (!then && !isOfOtherDay(text, quantity)) return;
    const now = quantities
      .slice(index + 1, index + 1 + MOST)
      .find((next) => next.killed === null && (fits(quantity, next) || isBare(quantity, next)));
    if (!now || now.begin - quantity.end > NEAR) return;
    const to = changed && isTo(text, quantity, now);
    if (!to && !leadsBack(text, quantity.end, now.begin)) return;
    quantity.noun ??= now.noun;
    if (then) now.noun ??= quantity.noun;
    setAgainst(quantity);
  });
}

function setAgainst(quantity: Quantity): void {
  if (quantity.noun === null) return;
  quantity.killed = null;
  quantity.against = 'itsOwn';
}

/** Tokens from a number to what it came down from. */
const FROM = 6;

/** 'it is five twenty calories, down from seven hundred'. */
const isDownFrom = (before: Quantity, quantity: Quantity) =>
  before.noun !== null &&
  before.killed === null &&
  quantity.begin - Math.max(before.end, before.noun.to) <= FROM &&
  (quantity.noun === null
    ? (quantity.unit === null || quantity.unit.unit === before.unit?.unit) &&
      isNear(before, quantity)
    : quantity.noun.nutrient === before.noun.nutrient);

/** 'went from seven hundred calories to five twenty'. */
function isTo({ tokens, language }: Text, { end, noun }: Quantity, { begin }: Quantity): boolean {
  const at = endWithNoun({ end, noun });
  return language.numbers.to.has(tokens[at]?.folded ?? '') && begin === at + 1;
}

/** 'it was seven hundred calories and now it is five twenty'. */
function isThen(text: Text, quantity: Quantity, next: Quantity | undefined): boolean {
  const { noun, killed, begin, end } = quantity;
  if (!next || noun === null || killed !== null || !text.marks.before('was', begin)) return false;
  const now = text.marks.firstIn('nowIs', end, next.begin);
  const alike = next.noun === null ? isBare(quantity, next) : fits(quantity, next);
  return now !== undefined && next.begin - now.to <= 2 && alike;
}

function isOfOtherDay(text: Text, { killed, unit, noun, begin, low }: Quantity): boolean {
  if (killed !== null && killed !== 'said before') return killed === 'of another day';
  if (unit !== null || noun !== null || low < 10) return false;
  const mark = lastBefore(text, begin, 'otherDay', DAY);
  if (mark === undefined) return false;
  // 'last time this lasagne was seven ten'
  const { pointers } = text.language.numbers;
  const same = pointers.has(text.tokens[mark.to]?.folded ?? '') && !isOne(text, mark.to);
  return !leadsBack(text, same ? mark.to + 1 : mark.to, begin);
}

function fits({ noun, unit }: Quantity, next: Quantity): boolean {
  if (next.noun === null) return false;
  return noun === null ? unit === null || unit.of === 'mass' : noun.nutrient === next.noun.nutrient;
}

/** Within which factor what this dish has is of what another day had, where no noun says what it counts. */
const FAR = 3;

const isNear = ({ low, high }: Quantity, next: Quantity) =>
  next.low * FAR >= high && next.high <= low * FAR;

/** 'last week's bowl was nine hundred calories, this one is six sixty'. */
const isBare = (quantity: Quantity, next: Quantity) =>
  quantity.noun !== null &&
  next.noun === null &&
  next.unit === null &&
  !next.fraction &&
  isNear(quantity, next);

/** 'this one', 'this is', and not 'this lasagne'. */
const isOne = ({ marks }: Text, at: number) =>
  marks.at('kindOf', at + 1) !== undefined || marks.at('copula', at + 1) !== undefined;

/** Whether words between lead back to this dish: 'now', 'this one'. */
export function leadsBack({ marks, tokens, language }: Text, from: number, to: number): boolean {
  if (marks.firstIn('now', from, to)) return true;
  for (let at = from; at < to; at += 1) {
    const subject = language.claims.subjects.has(tokens[at]?.folded ?? '');
    if (subject && language.numbers.pointers.has(tokens[at]?.folded ?? '')) return true;
  }
  return false;
}
