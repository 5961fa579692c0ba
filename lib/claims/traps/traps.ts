import { isOutOf } from '../numbers/out-of';
import { lastBefore, markBefore, markBehind, sentenceEnd, sentenceStart } from '../words/context';
import { isDifference } from '../nutrients/differences';
import { isHeard } from './heard';
import { isOfNumberBefore } from '../numbers/hedge-behind';
import { isGoal, isHearsay } from './hearsay';
import { endWithNoun, type Quantity } from '../numbers/quantity';
import { killRules } from './rules-for-all';
import { isSaidOfIt } from '../words/said-of-it';
import { only, type Text } from '../words/text';

/** Tokens in which another day that was named holds on. */
const OTHER_DAY = 9;
/** Tokens of a phrase for another day that is long, and of the longest. */
const LONG = 5;
const LONGEST = 8;

/**
 * Marks numbers that say nothing about the dish: of cameras and years, aims and limits, what is asked, denied, left
 * open, or told as what somebody said before.
 */
export function killTraps(text: Text, quantities: readonly Quantity[]): void {
  killRules(text, quantities);
  quantities.forEach((quantity, index) => {
    quantity.killed ??= trapOf(text, quantity, quantities, index);
    if (quantity.killed === 'aim') killList(text, quantities, index);
    if (quantity.killed === 'asked') killOther(text, quantity, quantities[index + 1]);
    if (quantity.killed === 'denied') lendNoun(text, quantities[index - 1], quantity);
  });
}

/** Tokens from an asked number to 'or' another. */
const OR = 3;

/** 'do you reckon that's four hundred calories or five hundred': the other number is asked as well. */
function killOther({ tokens, language }: Text, { end }: Quantity, next?: Quantity): void {
  if (!next || next.begin - end > OR) return;
  if (language.numbers.either.has(tokens[next.begin - 1]?.folded ?? '')) next.killed ??= 'asked';
}

function trapOf(
  text: Text,
  quantity: Quantity,
  all: readonly Quantity[],
  index: number,
): string | null {
  const bare = quantity.unit === null && quantity.noun === null;
  if (isOpen(text, quantity)) return 'left open';
  if (quantity.unit?.of !== 'degree' && isChapter(text, quantity)) return 'a chapter';
  if (quantity.unit?.of === 'mass' && text.marks.at('perUnit', quantity.end)) return 'rule';
  const shared =
    text.marks.at('serveBehind', quantity.to) !== undefined &&
    ['portion', 'slice'].includes(text.marks.before('serve', quantity.begin)?.role.as ?? '');
  if (shared) return null;
  if (text.marks.at('trapBehind', quantity.to) && (bare || quantity.unit?.of === 'share'))
    return 'of something else';
  if (text.marks.at('trapBehind', quantity.end) && quantity.unit?.of === 'degree')
    return 'of something else';
  if (text.marks.at('trapBehind', quantity.unitEnd) && quantity.unit?.of === 'share')
    return 'of something else';
  const gas = text.marks.before('gas', quantity.begin);
  if (bare && !gas && isNamedSo(text, quantity, all[index - 1])) return 'of something else';
  if (bare && isPronoun(text, quantity)) return 'of something else';
  if (isMargin(text, quantity, all[index - 1])) return 'a margin';
  if (isOfThan(text, quantity)) return 'of another thing';
  if (isPartOfIt(text, quantity)) return 'part of it';
  const out = quantity.unit === null && text.marks.at('filler', quantity.end + 1) !== undefined;
  if (out && isOutOf(text, quantity.end)) return 'part of it';
  if (isSizeOfPart(text, quantity)) return 'size of a part';
  if (isMultiplied(text, quantity)) return 'so many times';
  if (isYear(text, quantity, bare)) return 'year';
  if (markBefore(text, quantity, 'change', 1)) return 'a change';
  if (isAim(text, quantity) || isGoal(text, quantity)) return 'aim';
  if (isHearsay(text, quantity, all[index - 1])) return 'said by others';
  if (isOfOtherDay(text, quantity)) return 'of another day';
  if (isSupposed(text, quantity)) return 'a condition';
  if (isAsked(text, quantity)) return 'asked';
  if (isDenied(text, quantity) || isNotSo(text, quantity, all[index + 1])) return 'denied';
  if (isHeard(text, quantity, all, index)) return 'said before';
  return null;
}

/** 'episode 12', 'No. 5'; not 'four ten calories. No. Four twenty.' */
function isNamedSo({ marks }: Text, { begin }: Quantity, last: Quantity | undefined): boolean {
  const trap = marks.before('trap', begin);
  if (!trap) return false;
  const again = marks.at('correct', trap.from)?.to === trap.to;
  return !(again && last && trap.from - endWithNoun(last) <= 1);
}

/** 'last one my flapjack', 'this one, the soup': one of the dishes, and no number. */
function isPronoun({ tokens, language }: Text, { from, to, low, high }: Quantity): boolean {
  if (low !== 1 || high !== 1 || to - from !== 1 || tokens[from]?.kind !== 'word') return false;
  const next = tokens[to]?.text === ',' ? to + 1 : to;
  return language.patterns.behindPronoun.test(tokens[next]?.folded ?? '');
}

/** 'last week's curry was seven hundred', 'if you made it with cream it's 500': not this dish as it is. */
function isOfOtherDay(text: Text, quantity: Quantity): boolean {
  const { marks } = text;
  const { noun, unit, end } = quantity;
  const bare = unit?.of === 'mass' && text.food(end) === null;
  const counts = noun !== null || unit?.of === 'energy' || unit?.of === 'money' || bare;
  if (!counts || isDifference(text, quantity)) return false;
  // '2000 calories yesterday'
  const behind = markBehind(text, noun ? Math.max(noun.to, end) : end, 'otherDay', 0);
  if (behind) return true;
  const mark = lastBefore(text, quantity.begin, 'otherDay', OTHER_DAY + LONGEST);
  // What a long phrase names is still to come: 'I used to make it with lamb'.
  const from = mark && mark.to - mark.from >= LONG ? mark.to : mark?.from;
  if (!mark || quantity.begin - (from ?? 0) > OTHER_DAY) return false;
  const now =
    marks.firstIn('so', mark.to, quantity.begin) ?? marks.firstIn('now', mark.to, quantity.begin);
  return now === undefined;
}

/** By how much smaller than a number its margin is at least. */
const MARGIN = 3;

/** 'thirty one protein, give or take a gram': how far a number may be off. */
function isMargin(text: Text, { from, high, noun, unit }: Quantity, last?: Quantity): boolean {
  const hedge = text.marks.before('hedge', from);
  if (!last || !hedge || !isOfNumberBefore(text, hedge)) return false;
  const end = endWithNoun(last);
  const other = noun !== null && noun.nutrient !== last.noun?.nutrient;
  const measured = unit === null || unit.of === 'mass' || unit.of === last.unit?.of;
  return Math.abs(hedge.from - end) <= 1 && measured && !other && high * MARGIN <= last.low;
}

/** Tokens from 'than an egg' to its own number. */
const THAN = 6;

/** 'more protein than an egg, which has six grams' */
function isOfThan({ marks }: Text, { begin }: Quantity): boolean {
  const which =
    marks.before('which', begin) ??
    marks.before('which', marks.before('copula', begin)?.from ?? -1);
  return (
    which !== undefined &&
    marks.lastIn('thanWord', Math.max(0, which.from - THAN), which.from) !== undefined
  );
}

/** Tokens from 'if' to a number of its condition, and from there to what would be. */
const CONDITION = 14;
const OUTCOME = 10;

/** 'if you cut it in nine it would be 220': neither is said of the dish as it was made. */
function isSupposed(text: Text, { begin, end }: Quantity): boolean {
  const { ifs, would } = text.language.claims;
  const found = (words: ReadonlySet<string>, from: number, to: number) =>
    text.tokens.slice(Math.max(0, from), to).findLastIndex(({ folded }) => words.has(folded));
  const start = Math.max(sentenceStart(text, begin), begin - CONDITION);
  const first = found(ifs, start, begin);
  if (first < 0) return false;
  const stop = Math.min(sentenceEnd(text, begin), end + OUTCOME);
  return found(would, start + first, begin) >= 0 || found(would, end, stop) >= 0;
}

/** 'ninety calories of that is the oil': what one food has of it. */
function isPartOfIt({ marks }: Text, { noun, end }: Quantity): boolean {
  const part = noun && marks.at('ofThem', Math.max(noun.to, end));
  const copula = part && marks.at('copula', part.to);
  return copula !== undefined && copula !== null && marks.at('noun', copula.to) === undefined;
}

/** '4:45 oven, 220 °C': a line that begins with a clock names a chapter. */
function isChapter(text: Text, { from }: Quantity): boolean {
  const first = text.tokens[sentenceStart(text, from)];
  return !text.spoken && first?.kind === 'other' && /^\d+:\d/.test(first.text);
}

/** 'seven hundred and something'. */
function isOpen({ tokens, language }: Text, { to }: Quantity): boolean {
  const { and, open } = language.numbers;
  const at = and.has(tokens[to]?.folded ?? '') ? to + 1 : to;
  return open.has(tokens[at]?.folded ?? '');
}

/** '2 x 150 g': neither is what goes in. */
function isMultiplied({ tokens, marks }: Text, { begin }: Quantity): boolean {
  const times = marks.before('multiplied', begin);
  return (
    times !== undefined &&
    tokens[times.from - 1]?.kind === 'number' &&
    tokens[times.from - 1]?.text !== '1'
  );
}

function isYear(text: Text, { low, high, begin }: Quantity, bare: boolean): boolean {
  const year = low >= 1900 && high < 2100 && Number.isInteger(low);
  return bare && year && text.marks.before('yearWord', begin) !== undefined;
}

function isAim(text: Text, quantity: Quantity): boolean {
  const end = quantity.noun ? Math.max(quantity.noun.to, quantity.end) : quantity.end;
  const mark = markBefore(text, quantity, 'target', 3);
  // 'more than I wanted at 61'
  const than = mark && text.marks.lastIn('thanWord', mark.from - 2, mark.to);
  const links = ['filler', 'hedge', 'copula', 'small'] as const;
  const today = text.marks.at('scope', end)?.role.scope;
  // 'I have eaten fourteen hundred calories today so far'
  const eaten = today === 'soFar' || (today === 'day' && text.marks.at('now', end) !== undefined);
  const by = mark && text.marks.before('by', quantity.begin);
  if (by && by.from <= mark.from && isDifference(text, quantity)) return false;
  // 'today I ate 2050 calories'
  const eat = mark && text.marks.before('eat', mark.to);
  if (eat && text.marks.before('scope', eat.from)?.role.scope === 'day') return false;
  // 'I ate 165 g of protein a day', in a title: of the day that it shows
  const shown = text.context.form === 'title' && eat !== undefined && eat.to === mark?.to;
  if (shown && isDaySaid(text, mark.to)) return false;
  // 'with rice you add 180 calories'
  const adds = mark && text.marks.before('adds', mark.to);
  const added = adds && adds.from < mark.from;
  if (mark && !than && !eaten && !added && only(text, mark.to, quantity.begin, links)) return true;
  const behind = text.marks.at('targetBehind', end);
  return behind !== undefined;
}

function isDaySaid({ marks, tokens }: Text, from: number): boolean {
  for (let at = from; at < tokens.length; at += 1)
    if (marks.at('scope', at)?.role.scope === 'day') return true;
  return false;
}

/** '42 not 48 grams of protein': what the denied number counts is what the one before it counts. */
function lendNoun(text: Text, before: Quantity | undefined, denied: Quantity): void {
  if (!before || before.unit !== null || before.noun !== null || before.killed !== null) return;
  if (!only(text, before.end, denied.begin, ['not', 'joiner', 'filler'])) return;
  before.unit = denied.unit;
  before.noun = denied.noun;
}

/** A row that an aim began goes on with what is joined to it. */
function killList(text: Text, quantities: readonly Quantity[], index: number): void {
  let last = quantities[index];
  for (const next of quantities.slice(index + 1, index + 8)) {
    const end = last?.noun ? Math.max(last.noun.to, last.end) : (last?.end ?? 0);
    if (!only(text, end, next.begin, ['joiner', 'filler', 'hedge'])) return;
    next.killed ??= 'aim';
    last = next;
  }
}

function isAsked(text: Text, quantity: Quantity): boolean {
  const { tokens, marks, sentences } = text;
  const start = sentenceStart(text, quantity.from);
  const end = sentenceEnd(text, quantity.from);
  if (sentences.asked[quantity.sentence]) {
    if (marks.firstIn('ask', start, end)) return true;
    const comma = tokens.slice(quantity.from, end).some(({ text: mark }) => mark === ',');
    return !comma;
  }
  const ask = lastBefore(text, quantity.begin, 'ask', 4);
  // 'the fish is there when it's 60 degrees inside'
  const own = text.food((ask?.from ?? 0) - 1)?.to === ask?.from;
  return (
    ask !== undefined &&
    !own &&
    only(text, ask.to, quantity.begin, ['filler', 'hedge', 'copula', 'small'])
  );
}

function isDenied(text: Text, quantity: Quantity): boolean {
  const not = markBefore(text, quantity, 'not', 1);
  return (
    not !== undefined && not.to <= quantity.begin && only(text, not.to, quantity.begin, ['filler'])
  );
}

/** 'not under five hundred, it's five eighty five': what is denied with its hedge, where what is so follows. */
function isNotSo(text: Text, { begin, end, noun, unit }: Quantity, next?: Quantity): boolean {
  const { marks } = text;
  if (marks.at('hedge', begin)?.to === undefined || !marks.at('not', begin)) return false;
  if (!next || next.begin - end > NOT_SO || (next.unit?.of ?? null) !== (unit?.of ?? null))
    return false;
  if (next.noun !== null && next.noun.nutrient !== noun?.nutrient) return false;
  return isSaidOfIt(text, next.begin);
}

/** Tokens from what is denied to what is so. */
const NOT_SO = 8;

/** 'a slice of 150 grams': how big the part is, of which something is said. */
function isSizeOfPart({ language, marks, tokens }: Text, { begin, unit, noun }: Quantity): boolean {
  if (unit?.of !== 'mass' || noun !== null) return false;
  const behindOf = language.numbers.of.has(tokens[begin - 1]?.folded ?? '');
  const part = behindOf ? marks.before('thing', begin - 1) : undefined;
  // 'ten portions of 250 grams' says what each weighs.
  const { cardinals } = language.numbers;
  const counted = tokens[(part?.from ?? 0) - 1];
  if (counted?.kind === 'number' || (cardinals.get(counted?.folded ?? '') ?? 0) > 1) return false;
  return part?.role.as === 'slice' || part?.role.as === 'portion';
}
