import { lastBefore, sentenceStart } from '../words/context';
import type { Quantity } from '../numbers/quantity';
import { only, type Text } from '../words/text';

/** Tokens from 'people think' to their number. */
const REACH = 10;
/** Tokens from an aim to its verb: 'the budget for a lunch like this is'. */
const OF_GOAL = 8;

/** 'most people assume a bowl like this is eight hundred calories': what others say of it, up to their first number. */
export function isHearsay(
  text: Text,
  { begin, unit, noun }: Quantity,
  before: Quantity | undefined,
): boolean {
  const { marks, tokens } = text;
  if (noun === null && unit !== null && unit.of !== 'energy') return false;
  const mark = lastBefore(text, begin, 'hearsay', REACH);
  if (!mark || (before && before.begin >= mark.to)) return false;
  let verbs = 0;
  for (let at = mark.to; at < begin;) {
    const turn = marks.at('so', at) && !marks.at('reason', at);
    if (turn || marks.at('now', at) || /^[;:]$/.test(tokens[at]?.text ?? '')) return false;
    const copula = marks.at('copula', at);
    const verb = copula !== undefined && copula.to <= begin && tokens[at]?.kind === 'word';
    if (verb) verbs += 1;
    at = verb ? copula.to : at + 1;
  }
  // 'people think it is stodge it has thirty grams': what it has is no longer theirs.
  return verbs < 2;
}

/** 'my budget for lunch is five hundred calories': an aim that is named before its number. */
export function isGoal(text: Text, { begin }: Quantity): boolean {
  const { marks, language } = text;
  const copula = marks.before('copula', begin);
  if (!copula) return false;
  const from = Math.max(sentenceStart(text, begin), copula.from - OF_GOAL);
  const goal = marks.lastIn('goal', from, copula.from);
  if (!goal) return false;
  if (goal.to === copula.from) return true;
  const led = marks.at('serveTitle', goal.to) ?? marks.at('asWord', goal.to);
  const of = language.numbers.of.has(text.tokens[goal.to]?.folded ?? '');
  const words = ['small', 'filler', 'scope', 'thing', 'noun', 'asWord', 'serveTitle'] as const;
  return (led !== undefined || of) && only(text, goal.to, copula.from, words);
}
