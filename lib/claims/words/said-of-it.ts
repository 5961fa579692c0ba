import type { Text } from './text';

/** Whether 'it is', 'that's', 'they are actually' or the like leads to a number, so that it is of what was said before. */
export function isSaidOfIt({ marks, tokens, language }: Text, begin: number): boolean {
  const { subjects } = language.claims;
  let at = begin;
  for (let skips = 0; skips < 3; skips += 1) {
    const copula = marks.before('copula', at);
    if (copula) {
      const first = tokens[copula.from]?.folded ?? '';
      const own = subjects.has(first) || subjects.has(first.replace(/s$/, ''));
      return own || subjects.has(tokens[copula.from - 1]?.folded ?? '');
    }
    const soft = marks.before('filler', at) ?? marks.before('correct', at);
    if (!soft) return false;
    at = soft.from;
  }
  return false;
}
