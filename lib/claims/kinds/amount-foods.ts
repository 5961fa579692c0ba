import { leanSharesEnd } from './lean-shares';
import { nameOf, type FoodSpan } from '../words/foods';
import { phraseAt } from '../words/phrases';
import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Words that a food has at most where nobody knows its name. */
const LONGEST_NAME = 4;

interface Named {
  readonly name: string;
  readonly to: number;
  readonly adjacent: boolean;
}

/** The food right behind a number and its unit, or behind the other unit in brackets that follows it. */
export function foodBehind(text: Text, quantity: Quantity, measured: boolean): Named | null {
  const { tokens, language } = text;
  let at = Math.max(quantity.unitEnd, quantity.end);
  let adjacent = true;
  const pack = measured ? text.marks.at('pack', at) : undefined;
  if (pack && quantity.unit?.of !== 'container') at = pack.to;
  if (measured && /^[(/]$/.test(tokens[at]?.text ?? '')) {
    const other = text.marks.at('unit', at + 2);
    const slash = tokens[at]?.text === '/' && tokens[at + 1]?.kind === 'number' && other;
    const close = slash
      ? other.to - at - 1
      : tokens.slice(at, at + 8).findIndex(({ text: mark }) => mark === ')');
    if (close > 0) at += close + 1;
    adjacent = false;
  } else if (measured && tokens[at]?.text === ')') {
    at += 1;
    adjacent = false;
  }
  if (text.marks.at('ofThem', at)) return null;
  const of = language.numbers.of.has(tokens[at]?.folded ?? '');
  if (of) at += 1;
  // 'five hundred grams of five percent mince'
  const share = text.marks.at('unit', at + 1);
  if (saysNumber(tokens[at], language) && share?.role.of === 'share') at = share.to;
  at = labelEnd(text, leanSharesEnd(text, at) ?? at);
  const known = text.food(at);
  if (known) return { name: known.name, to: known.to, adjacent };
  if (!measured && !isLine(text, quantity)) return null;
  const spoken = measured && !of && quantity.unit?.of !== 'container' ? spokenFood(text, at) : null;
  if (spoken) return { ...spoken, adjacent };
  const name = unknownFood(text, at, of || isLine(text, quantity));
  return name && { ...name, adjacent };
}

/** Token behind what a label says before a food: 'full fat milk', 'the reduced fat mature cheddar'. */
export function labelEnd({ tokens, language, food }: Text, at: number): number {
  let from = at;
  while (language.foods.plain.has(tokens[from]?.folded ?? '')) from += 1;
  const label =
    phraseAt(language.foods.labels, tokens, at) ?? phraseAt(language.foods.labels, tokens, from);
  return label && food(label.next) ? label.next : at;
}

/** Tokens that the first line of a list has at most. */
const FIRST_LINE = 9;

/** Whether a number begins its line, as those of ingredients do. */
export function isLine({ tokens, context, marks }: Text, { begin }: Quantity): boolean {
  if (context.form !== 'description' && context.form !== 'card') return false;
  const before = tokens[begin - 1];
  // The first line, where others follow.
  return before === undefined
    ? tokens.slice(0, FIRST_LINE).some(({ kind }) => kind === 'line')
    : before.kind === 'line' ||
        (/^[•\-–*·]$/.test(before.text) &&
          marks.at('joiner', begin - 1) !== undefined &&
          (tokens[begin - 2]?.kind ?? 'line') === 'line');
}

/** 'one hundred grams discard, fifteen grams butter': a word that is in no table, with nothing else behind it. */
function spokenFood(text: Text, at: number): { readonly name: string; readonly to: number } | null {
  const { tokens, language, marks } = text;
  const word = tokens[at];
  if (!text.spoken || word?.kind !== 'word' || word.folded.length < 4) return null;
  if (
    language.foods.noName.test(word.folded) ||
    marks.any(at) ||
    language.foods.plain.has(word.folded)
  )
    return null;
  const next = tokens[at + 1];
  const ends =
    next === undefined ||
    next.kind !== 'word' ||
    language.numbers.cardinals.has(next.folded) ||
    language.numbers.and.has(next.folded);
  return ends ? { name: nameOf(tokens, at, at + 1, language.singular), to: at + 1 } : null;
}

/** A food by a name that is in no table: the words up to a mark or a word that joins. */
export function unknownFood(
  text: Text,
  from: number,
  sure: boolean,
): Pick<FoodSpan, 'name' | 'to'> | null {
  if (!sure) return null;
  const { tokens, language, marks } = text;
  let begin = from;
  while (language.foods.plain.has(tokens[begin]?.folded ?? '')) begin += 1;
  let to = begin;
  const stop = (at: number) =>
    tokens[at]?.kind !== 'word' ||
    (at > begin && language.numbers.cardinals.has(tokens[at].folded)) ||
    (
      [
        'small',
        'joiner',
        'copula',
        'noun',
        'thing',
        'so',
        'which',
        'trapBehind',
        'unit',
        'not',
        'into',
      ] as const
    ).some((category) => marks.at(category, at));
  while (to < begin + LONGEST_NAME && !stop(to)) to += 1;
  return to > begin ? { name: nameOf(tokens, begin, to, language.singular), to } : null;
}
