import type { Language } from '../language';
import type { Token } from './tokens';

/**
 * Whether a token is a number, or begins one: digits, or the word for one; 'hundred' and 'half' alone are none.
 * @example saysNumber(tokenize('forty grams')[0], ENGLISH) // true
 */
export const saysNumber = (
  token: Token | undefined,
  { numbers }: Pick<Language, 'numbers'>,
): boolean => token?.kind === 'number' || numbers.cardinals.has(token?.folded ?? '');
