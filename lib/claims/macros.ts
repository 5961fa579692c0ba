import type { Text } from './text';

/** Sentences in which the letter of the first macronutrient stands beside digits: there, C and F are no degrees. */
export function macroSentences({ tokens, marks, language, sentences }: Text): Set<number> {
  const [first] = language.letters.keys();
  const found = new Set<number>();
  tokens.forEach((token, at) => {
    if (token.text !== first) return;
    const unit = marks.before('unit', at);
    const before = unit?.role.of === 'mass' ? unit.from - 1 : at - 1;
    if (tokens[before]?.kind !== 'number' && tokens[at + 1]?.kind !== 'number') return;
    found.add(sentences.of[at] ?? 0);
  });
  return found;
}

/** Tokens around '42p' in which '18c' makes it no pence. */
const MACRO_REACH = 8;

/** '42p | 18c | 11f': small letters of macronutrients beside each other. */
export function besideMacro({ tokens, language }: Text, at: number): boolean {
  const letters = new Set(
    [...language.letters.keys()].slice(1).map((letter) => letter.toLowerCase()),
  );
  return tokens
    .slice(Math.max(0, at - MACRO_REACH), at + MACRO_REACH)
    .some(({ text, glued }) => glued && letters.has(text));
}
