import type { Language, Role } from './language';
import { phraseAt } from './phrases';
import type { Token } from './tokens';

type Category = Role['cat'];

/** What leads on to a number, so that no sentence ends between. */
const LEADS: readonly Category[] = ['copula', 'hedge', 'filler', 'lead'];
/** Units and nouns that a number right before them counts. */
const COUNTED: readonly Category[] = ['unit', 'noun'];
/** Tokens that words before a full stop have at most, as one phrase. */
const LONGEST = 4;

/**
 * Leaves out full stops that captions set inside of what is one statement: within a number, between a number and its
 * unit or noun, before 'of', behind words that lead to a number, before a part that stands alone.
 * @example joinBroken(tokenize('two. Hundred. Calories. In one bowl.'), ENGLISH) // two Hundred Calories In one bowl.
 */
export function joinBroken(tokens: readonly Token[], language: Language): Token[] {
  return tokens.filter(
    ({ text, glued }, at) =>
      text !== '.' || !glued || tokens[at + 1]?.glued === true || !breaks(tokens, at, language),
  );
}

function breaks(tokens: readonly Token[], stop: number, language: Language): boolean {
  const { numbers } = language;
  const word = (at: number) => tokens[at]?.folded ?? '';
  const hundreds = (at: number) => numbers.hundred.has(word(at)) || numbers.thousand.has(word(at));
  const number = (at: number) =>
    tokens[at]?.kind === 'number' || numbers.cardinals.has(word(at)) || hundreds(at);
  const next = stop + 1;
  if (number(stop - 1)) {
    if (hundreds(next)) return true;
    if (hundreds(stop - 1) && numbers.and.has(word(next)) && number(next + 1)) return true;
    const counted = phraseOf(tokens, next, language, COUNTED);
    // 'forty. Fat is eleven.': the noun begins what follows.
    const goesOn = counted === null || number(counted);
    return !goesOn && phraseOf(tokens, counted, language, ['copula']) === null;
  }
  if (numbers.of.has(word(next)) && leadsTo(tokens, stop, language, ['unit'])) return true;
  if (number(next) && leadsTo(tokens, stop, language, LEADS)) return true;
  const part = phraseOf(tokens, next, language, ['scope']);
  return (
    part !== null &&
    (part === tokens.length || tokens[part]?.text === '.') &&
    leadsTo(tokens, stop, language, COUNTED)
  );
}

/** Token behind the phrase of one of some categories that begins at a token; null where none does. */
function phraseOf(
  tokens: readonly Token[],
  at: number,
  { lexicon }: Language,
  categories: readonly Category[],
): number | null {
  const found = phraseAt(lexicon, tokens, at);
  return found?.value.some(({ cat }) => categories.includes(cat)) ? found.next : null;
}

/** Whether a phrase of one of some categories ends before a token. */
function leadsTo(
  tokens: readonly Token[],
  to: number,
  language: Language,
  categories: readonly Category[],
): boolean {
  for (let from = Math.max(0, to - LONGEST); from < to; from += 1) {
    if (phraseOf(tokens, from, language, categories) === to) return true;
  }
  return false;
}
