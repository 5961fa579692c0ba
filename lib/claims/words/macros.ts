import type { Text } from './text';

type Words = Pick<Text, 'tokens' | 'language' | 'marks'>;

/** Lines around that of the first letter in which the others may stand. */
const LINES = 3;

/** Sentences in which the letter of the first macronutrient stands beside digits: there, C and F are no degrees. */
export function macroSentences(text: Words & Pick<Text, 'sentences' | 'spoken'>): Set<number> {
  const { tokens, marks, language, sentences, spoken } = text;
  const onLines = !spoken && tokens.some(({ kind }) => kind === 'line');
  const [first] = language.letters.keys();
  const found = new Set<number>();
  tokens.forEach((token, at) => {
    if (token.text.toUpperCase() !== first) return;
    const inRow = isInRow(text, at);
    if (token.text !== first && !inRow) return;
    const unit = marks.before('unit', at);
    const before = unit?.role.of === 'mass' ? unit.from - 1 : at - 1;
    const beside = tokens[before]?.kind === 'number' || tokens[at + 1]?.kind === 'number';
    if (!beside && !inRow) return;
    const sentence = sentences.of[at] ?? 0;
    // On a card each letter has a line of its own.
    for (let line = sentence - LINES; line <= sentence + LINES; line += 1)
      if (line === sentence || onLines) found.add(line);
  });
  return found;
}

/** 'P/C/F', 'kcal | p | c | f': a letter beside another one, or a name, with a stroke between. */
export function isInRow({ tokens, language, marks }: Words, at: number): boolean {
  const letter = (place: number) => language.letters.has(tokens[place]?.text.toUpperCase() ?? '');
  const stroke = (place: number) => /^[/|]$/.test(tokens[place]?.text ?? '');
  if (!letter(at)) return false;
  const behind = letter(at + 2) || marks.at('noun', at + 2) !== undefined;
  const before = letter(at - 2) || marks.before('noun', at - 1) !== undefined;
  return (stroke(at + 1) && behind) || (stroke(at - 1) && before);
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
