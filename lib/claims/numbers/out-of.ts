import { saysNumber } from '../words/says-number';
import type { Text } from '../words/text';

/** 'a hundred and forty of the four twenty is dressing': so much of another number. */
export function isOutOf({ tokens, language, marks }: Text, end: number): boolean {
  if (!language.numbers.of.has(tokens[end]?.folded ?? '')) return false;
  return saysNumber(tokens[marks.at('filler', end + 1)?.to ?? end + 1], language);
}
