import type { Nutrient } from '#lib/foods/nutrients';
import type { Quantity, Said } from './quantity';
import type { Text } from '../words/text';

/** What was counted last: of a nutrient, money or weight, with its number where one was said. */
export interface Topic {
  readonly said: Said;
  readonly nutrient: Nutrient | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly end: number;
  readonly of: 'nutrient' | 'price' | 'weight';
}

/** Tokens from one comparison to another that is joined to it. */
const JOINED = 14;

/** 'half the calories of the bakery version'; behind another comparison also 'and half the sugar'. */
export function shareOf(
  text: Text,
  from: number,
  to: number,
  factor: number,
  before: Quantity | undefined,
): Quantity | null {
  const noun = text.marks.at('noun', to);
  const of = noun && text.marks.at('asWord', noun.to);
  const after =
    before?.said?.scope === 'compared' &&
    from - before.end <= JOINED &&
    text.marks.before('joiner', text.marks.before('hedge', from)?.from ?? from) !== undefined;
  // 'Compared with the canned one: half the salt'
  const other = text.marks.lastIn('scope', from - JOINED, from);
  const joined = after || (other?.role.scope === 'compared' && text.tokens[from - 1]?.text === ':');
  // 'a third of the fat in here is the cheddar': what one food has of it.
  const copula = of && text.marks.firstIn('copula', of.to, of.to + 3);
  if (copula && (text.food(copula.to) ?? text.food(copula.to + 1))) return null;
  if (!noun || (!of && !joined) || text.marks.at('noun', noun.to + 1)) return null;
  return made(text, from, noun.to, factor * 100, factor * 100, factor < 1, {
    kind: 'nutrient',
    nutrient: noun.role.nutrient,
    unit: '%',
    scope: 'compared',
    against: 'shareOf',
  });
}

/** 'a third fewer calories': a share by which it is less or more. */
export function lessBy(
  text: Text,
  from: number,
  to: number,
  factor: number,
  against: 'less' | 'more',
): Quantity | null {
  const noun = text.marks.at('noun', to);
  if (!noun || text.marks.at('noun', noun.to)) return null;
  const share = factor * 100;
  return made(text, from, noun.to, share, share, true, {
    kind: 'nutrient',
    nutrient: noun.role.nutrient,
    unit: '%',
    scope: 'compared',
    against,
  });
}

export function timesOf(
  text: Text,
  topic: Topic,
  from: number,
  to: number,
  factor: number,
  list: boolean,
): Quantity[] {
  if (topic.low === null || topic.high === null || topic.of !== 'nutrient') return [];
  const scope = factor === 1 / 2 ? {} : { scope: 'unknown' as const };
  const quantity = made(text, from, to, topic.low * factor, topic.high * factor, true, {
    ...topic.said,
    ...scope,
  });
  return [{ ...quantity, list }];
}

/** A quantity that words without a number come to. */
export function made(
  text: Text,
  from: number,
  to: number,
  low: number,
  high: number,
  fraction: boolean,
  said: Said,
): Quantity {
  const { tokens } = text;
  return {
    from,
    to,
    begin: from,
    end: to,
    low,
    high,
    digits: tokens.slice(from, to).some(({ kind }) => kind === 'number'),
    words: true,
    fraction,
    parts: undefined,
    money: undefined,
    unsure: false,
    hedge: low === high ? (text.marks.before('hedge', from)?.role.hedge ?? 'none') : 'between',
    unit: null,
    unitEnd: to,
    sentence: text.sentences.of[from] ?? 0,
    noun: null,
    list: false,
    corrected: false,
    killed: null,
    said,
    how: [],
  };
}
