import type { Mark } from '../words/marks';
import type { Text } from '../words/text';

/** 'Lentil Bowl: 55 g protein': what the dish is called, and no part of it. */
export function isName(
  { tokens, context, title, language }: Text,
  { role, from, to }: Mark<'scope'>,
): boolean {
  if (role.link !== 'subject' || tokens[to]?.text !== ':' || from === 0) return false;
  const before = tokens[from - 1];
  if (context.form === 'title') return before?.kind === 'word';
  return title.stems.includes(language.singular(before?.folded ?? ''));
}

/** 'this wrap', where the title is of one: the dish itself. */
export function isThisDish(
  { tokens, title, language }: Text,
  { role, from, to }: Mark<'scope'>,
): boolean {
  if (role.scope !== 'each' || to - from !== 2) return false;
  const [this_, word] = [tokens[from]?.folded ?? '', tokens[to - 1]?.folded ?? ''];
  return language.claims.thisOne.has(this_) && title.words.at(-1) === word;
}

/** 'a pot', 'per pot', 'in a tin', and not 'the pot'. */
export const isOfOne = ({ marks, tokens, language }: Text, { from, to }: Mark<'scope'>) =>
  marks.at('per', from) !== undefined || language.numbers.article.has(tokens[to - 2]?.folded ?? '');
