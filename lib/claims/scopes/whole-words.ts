import type { Mark } from '../words/marks';
import type { Text } from '../words/text';
import { isDishWord } from '../words/dish-word';

type Part = Mark<'scope'>['role'];

/** Words of the name of what is meant whole, and of an aside behind it. */
const NAME = 3;
const ASIDE = 8;

/**
 * All of a dish, or half of it, by a word that is in no table of parts: 'the whole dip is', 'the whole tub is … half the
 * tub', 'Full stack (4): 420 cal'.
 */
export function wholeWords(text: Text): Mark<'scope'>[] {
  const { marks, tokens, language } = text;
  const found: Mark<'scope'>[] = [];
  const names = new Set<string>();
  for (const { from, to } of marks.all('allOfIt')) {
    const known = marks.at('scope', from);
    const end = nameBehind(text, to);
    if (end === null || (known && known.to >= end && known.role.scope !== 'each')) continue;
    names.add(tokens[end - 1]?.folded ?? '');
    found.push({ role: WHOLE, from, to: end });
  }
  if (names.size === 0) return found;
  const { half, article, of } = language.numbers;
  tokens.forEach(({ folded }, from) => {
    if (!half.has(folded)) return;
    let at = from + 1;
    while (
      at < from + NAME &&
      (article.has(tokens[at]?.folded ?? '') ||
        of.has(tokens[at]?.folded ?? '') ||
        marks.at('filler', at))
    )
      at += 1;
    if (names.has(tokens[at]?.folded ?? '')) found.push({ role: HALF, from, to: at + 1 });
  });
  return found;
}

/** Tokens from 'all the' to the pieces. */
const PIECES = 2;

/** 'this is for the all pancakes together', 'all four squares are': all of its pieces. */
export function allPieces({ marks }: Text): Mark<'scope'>[] {
  return marks.all('allThe').flatMap(({ from, to }) => {
    const thing = marks.firstIn('thing', to, to + PIECES);
    if (!thing || thing.role.as === 'whole' || thing.role.as === 'person') return [];
    const start = marks.before('filler', from)?.from ?? from;
    const led = marks.before('serveTitle', start) ?? marks.before('asWord', start);
    return led || marks.at('copula', thing.to) ? [{ role: WHOLE, from, to: thing.to }] : [];
  });
}

/** The token behind the name of what may be meant whole, where its verb, a colon or an aside follows. */
function nameBehind(text: Text, from: number): number | null {
  const { marks, tokens, spoken } = text;
  for (let at = from; at < from + NAME; at += 1) {
    if (tokens[at]?.kind !== 'word' || marks.at('copula', at) || marks.at('joiner', at))
      return null;
    const end = at + 1;
    const verb = marks.at('copula', end) !== undefined || leads(text, end);
    if (verb) return isEaten(text, from, end) || (!spoken && isHead(text, from)) ? end : null;
  }
  return null;
}

/** '(4):', ', every last bit of it, is'. */
function leads({ marks, tokens, language }: Text, at: number): boolean {
  const [open, close] = tokens[at]?.text === '(' ? ['(', ')'] : [',', ','];
  if (tokens[at]?.text !== open) return false;
  for (let next = at + 1; next <= at + ASIDE; next += 1) {
    const token = tokens[next];
    if (token?.text === close)
      return marks.at('copula', next + 1) !== undefined || tokens[next + 1]?.text === ':';
    if (open === ',' && language.numbers.cardinals.has(token?.folded ?? '')) return false;
  }
  return false;
}

/** Whether it is a dish, a food, a vessel or the pack of one: not 'the whole point is'. */
function isEaten({ marks, tokens, food, language, title }: Text, from: number, end: number) {
  const word = tokens[end - 1]?.folded ?? '';
  const piece = marks.before('thing', end)?.role.as;
  if (piece !== undefined)
    return piece === 'whole' || piece === 'meal' || title.words.at(-1) === word;
  if (isDishWord(word, language) || title.words.includes(word)) return true;
  if (marks.before('pack', end)) return true;
  const named = food(from);
  return named !== null && named.to === end;
}

/** At the start of its line: 'Full stack (4): 420 cal'. */
const isHead = ({ tokens }: Text, from: number) =>
  tokens[from - 2] === undefined ||
  tokens[from - 2]?.kind === 'line' ||
  tokens[from - 2]?.text === '.';

const WHOLE: Part = { cat: 'scope', scope: 'whole', link: 'free' };
const HALF: Part = { cat: 'scope', scope: 'half', link: 'free' };
