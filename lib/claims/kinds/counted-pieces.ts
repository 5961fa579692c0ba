import { sentenceStart } from '../words/context';
import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Whether counted pieces without a verb are what the dish makes; `to`: the token behind their name. */
export const isMade = (
  text: Text,
  quantity: Quantity,
  to: number,
  before: Quantity | undefined,
): boolean =>
  isEach(text, to) ||
  (isFirst(text, quantity, to) && !isListed(text, quantity, to, before)) ||
  (((isOwnLine(text, quantity, to) && !isEaten(text, quantity, to)) ||
    isOfTitle(text, quantity, to)) &&
    !isListed(text, quantity, to, before));

/** Tokens from a number to its unit. */
const MEASURED = 6;

/** 'four rolls, one onion, a tomato', 'half a teaspoon of sugar four rolls': one of the foods that go in. */
export function isListed(
  { tokens, language: { numbers }, marks, food }: Text,
  { begin }: Quantity,
  to: number,
  before: Quantity | undefined,
): boolean {
  const measured = (at: number) => {
    const unit = marks.firstIn('unit', at, at + MEASURED);
    const food = numbers.of.has(tokens[unit?.to ?? 0]?.folded ?? '') && unit?.role.of === 'mass';
    return food && marks.at('noun', unit.to + 1) === undefined;
  };
  const amount = before?.killed === null && before.said?.kind === 'amount';
  if (amount && before.said?.food !== undefined && begin - before.end <= 1) return true;
  const next = tokens[to]?.text === ',' || numbers.and.has(tokens[to]?.folded ?? '') ? to + 1 : to;
  const { kind, folded = '' } = tokens[next] ?? {};
  if (marks.at('hedge', next) && measured(next + 1)) return true;
  if (kind !== 'number' && !numbers.cardinals.has(folded)) return false;
  if (measured(next)) return true;
  const counted = food(next + 1);
  return counted?.from === next + 1 && marks.at('thing', next + 1) === undefined;
}

/** Tokens behind a count in which a number of each follows. */
const EACH_REACH = 8;

/** 'six balls, ninety grams each'. */
function isEach({ marks, tokens, language }: Text, to: number): boolean {
  const each = marks.firstIn('scope', to, to + EACH_REACH);
  // 'two sandwiches, each sandwich 380 calories'
  const comma = tokens[to]?.text === ',' && each?.from === to + 1;
  if (comma && each.role.scope === 'each' && each.role.link === 'free') return true;
  if (each?.role.link !== 'counted') return false;
  return tokens.slice(to, each.from).some((token) => saysNumber(token, language));
}

/** Tokens in which each of what was counted first is told. */
const FIRST_REACH = 18;

/** 'Six burritos, freezer, done. Each one is 410 calories': what a text or sentence begins with, and each of them later. */
function isFirst(text: Text, { begin, low }: Quantity, to: number): boolean {
  const { marks, tokens, context } = text;
  if (context.form === 'title' || low < FEW || sentenceStart(text, begin) !== begin) return false;
  if (!/^[.,]$/.test(tokens[to]?.text ?? '')) return false;
  for (let at = to; at < to + FIRST_REACH; at += 1) {
    const part = marks.at('scope', at);
    if (part?.role.link === 'counted') return true;
  }
  return false;
}

/** Pieces of a dish of which fewer may be what somebody eats. */
const FEW = 4;

/** 'twelve cookies, eight minutes': so many of what the title counts. */
function isOfTitle(
  { context, title, tokens, language, marks }: Text,
  { low, begin }: Quantity,
  to: number,
) {
  if (context.form === 'title') return false;
  const word = tokens[to - 1]?.folded ?? '';
  const head = title.stems.at(-1) ?? '';
  const same = head !== '' && head === language.singular(word);
  // 'four koftas is a serve'
  if (marks.at('scope', marks.at('copula', to)?.to ?? -1)) return false;
  return same && low >= FEW && !marks.before('per', begin) && !marks.before('eat', begin);
}

/** Tokens of the line behind a count. */
const LINE = 16;

/** '3 tacos' and on the next line what they have: so many are eaten, unless it is of each. */
function isEaten({ tokens, marks }: Text, { low }: Quantity, to: number): boolean {
  if (low >= FEW || tokens[to]?.kind !== 'line') return false;
  let nutrient = false;
  for (let at = to + 1; at <= to + LINE && tokens[at] && tokens[at]?.kind !== 'line'; at += 1) {
    if (marks.at('scope', at)) return false;
    nutrient ||= marks.at('noun', at) !== undefined;
  }
  return nutrient;
}

/** '14 bites' on a line of its own, or at the start of an answer. */
function isOwnLine({ tokens, spoken, context }: Text, { begin }: Quantity, to: number): boolean {
  if (spoken) return false;
  const before = tokens[begin - 1];
  const starts = before === undefined || before.kind === 'line' || before.text === ':';
  const next = tokens[to];
  const bracket = before?.text === '(' && /^[,)]$/.test(next?.text ?? '');
  if (context.form === 'title') return bracket;
  return bracket || (starts && (next === undefined || next.kind === 'line' || next.text === ','));
}
