import type { Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** What may stand between the name of a part and its number. */
const LINKS = ['copula', 'adds', 'alone', 'hedge', 'filler', 'at'] as const;
/** Tokens from the name of a part to its number. */
const REACH = 6;

/**
 * What a part is called that is no food the language knows: 'patty is 190', 'the filling's eight ninety', 'just the
 * dough, two hundred'. Null where the word there does something else.
 * @param begin first token of the number
 */
export function partName(text: Text, begin: number): string | null {
  const { marks, tokens, language } = text;
  let at = begin;
  for (let moved = true; moved && begin - at < REACH;) {
    moved = false;
    if (tokens[at - 1]?.text === ',') [at, moved] = [at - 1, true];
    for (const link of LINKS) {
      const mark = marks.before(link, at);
      if (mark) [at, moved] = [mark.from, true];
    }
  }
  const token = tokens[at - 1];
  if (token?.kind !== 'word' || saysNumber(token, language)) return null;
  const verb = /['’]s$/.test(token.text);
  if (at === begin && !verb) return null;
  const name = verb ? token.folded.slice(0, -1) : token.folded;
  if (name.length < LEAST || isTaken(text, at - 1) || !isLed(text, at - 1)) return null;
  return name;
}

/** Letters of a name. */
const LEAST = 3;

/** Whether a word does something by itself in the language, so that it names nothing. */
function isTaken({ marks, tokens, language }: Text, at: number): boolean {
  const { subjects, pointing, persons, they } = language.claims;
  const word = tokens[at]?.folded ?? '';
  if ([subjects, pointing, persons, they].some((words) => words.has(word))) return true;
  const thing = marks.before('thing', at + 1)?.role.as;
  if (thing !== undefined) return thing !== 'piece';
  const own = ['noun', 'joiner', 'so', 'scope', 'unit', 'which', 'small'] as const;
  return own.some((category) => marks.before(category, at + 1) !== undefined);
}

/** Whether the name begins what is said: behind a mark, a joiner or 'the'. */
function isLed({ marks, tokens, language }: Text, at: number): boolean {
  const before = tokens[at - 1];
  if (before?.kind !== 'word') return true;
  if (language.numbers.article.has(before.folded) || language.numbers.pointers.has(before.folded))
    return true;
  return marks.before('joiner', at) !== undefined || marks.before('filler', at) !== undefined;
}
