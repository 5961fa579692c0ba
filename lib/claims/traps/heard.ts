import { lastBefore, markBefore } from '../words/context';
import type { Quantity } from '../numbers/quantity';
import { isSaidOfIt } from '../words/said-of-it';
import { only, type Text } from '../words/text';

/** Tokens behind 'I said …' in which what was said is looked for again. */
const HEARD_AGAIN = 40;
/** Tokens from 'I say the stew is' to its number, and from that to what it is. */
const QUOTE = 8;
const IS_SO = 14;
/** Tokens from a number to what was said of it: '34 g a bowl (the video says 31)'. */
const ASIDE = 8;

/** Whether a number is what was said or shown before, beside what it is. */
export function isHeard(
  text: Text,
  quantity: Quantity,
  all: readonly Quantity[],
  index: number,
): boolean {
  return (
    isSaidAgain(text, quantity, all, index) ||
    isPutRight(text, quantity, all, index) ||
    isInAside(text, quantity, all[index - 1])
  );
}

/** 'I said 48', 'the card says 71', where the same is said again. */
function isSaidAgain(
  text: Text,
  quantity: Quantity,
  all: readonly Quantity[],
  index: number,
): boolean {
  const heard = said(text, quantity);
  if (!heard) return false;
  return all
    .slice(index + 1, index + 6)
    .some(
      (next) =>
        next.from - quantity.end < HEARD_AGAIN &&
        (quantity.noun === null || countsAlike(quantity, next)) &&
        (next.unit?.of === quantity.unit?.of || next.unit === null || quantity.unit === null),
    );
}

/** The words right before a number that say that it was said. */
function said(text: Text, quantity: Quantity) {
  const heard = markBefore(text, quantity, 'heard', 3);
  // 'the middle says 160': a thermometer says it.
  const shown = heard && text.marks.before('place', heard.from)?.role.place === 'inside';
  const links = ['filler', 'hedge', 'copula', 'small'] as const;
  return heard && !shown && only(text, heard.to, quantity.begin, links) ? heard : null;
}

/** 'at 2:10 I say the stew is 430 calories. It's 460.' */
function isPutRight(
  text: Text,
  quantity: Quantity,
  all: readonly Quantity[],
  index: number,
): boolean {
  const { begin, end, noun, unit, low } = quantity;
  const heard = lastBefore(text, begin, 'heard', QUOTE);
  const [last, next] = [all[index - 1], all[index + 1]];
  if (!heard || !next || (last && last.begin >= heard.to)) return false;
  if (noun === null && unit?.of !== 'energy') return false;
  const near = next.begin - end <= IS_SO && next.low !== low;
  return near && countsAlike(quantity, next) && isSaidOfIt(text, next.begin);
}

/** '34 g of protein a bowl (the video says 31)' */
function isInAside(text: Text, quantity: Quantity, last: Quantity | undefined): boolean {
  if (!last?.noun || last.killed !== null || quantity.low === last.low) return false;
  const heard = said(text, quantity);
  const end = Math.max(last.noun.to, last.end);
  return heard !== null && heard.from - end <= ASIDE && countsAlike(last, quantity);
}

/** Whether the second of two numbers may count what the first counts. */
const countsAlike = ({ noun, unit }: Quantity, next: Quantity) =>
  next.noun === null
    ? next.unit === null || next.unit.of === unit?.of
    : next.noun.nutrient === noun?.nutrient;
