import type { Text } from './text';

/** Lines around that of the first letter in which the others may stand. */
const LINES = 3;

/** Sentences in which the letter of the first macronutrient stands beside digits: there, C and F are no degrees. */
export function macroSentences({ tokens, marks, language, sentences, spoken }: Text): Set<number> {
  const onLines = !spoken && tokens.some(({ kind }) => kind === 'line');
  const [first] = language.letters.keys();
  const found = new Set<number>();
  tokens.forEach((token, at) => {
    if (token.text !== first) return;
    const unit = marks.before('unit', at);
    const before = unit?.role.of === 'mass' ? unit.from - 1 : at - 1;
    if (tokens[before]?.kind !== 'number' && tokens[at + 1]?.kind !== 'number') return;
    const sentence = sentences.of[at] ?? 0;
    // On a card each letter has a line of its own.
    for (let line = sentence - LINES; line <= sentence + LINES; line += 1)
      if (line === sentence || onLines) found.add(line);
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
    .some(
      ({ text, glued }, place, all) =>
        letters.has(text) &&
        (glued || language.numbers.cardinals.has(all[place - 1]?.folded ?? '')),
    );
}
