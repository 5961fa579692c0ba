import type { Mark } from './marks';
import type { Quantity } from './quantity';
import { only, type Text } from './text';

/** Parts that no phrase of the language names: counted ones, shares, and those by a word that is in no table. */
export const unnamedParts = (text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] => [
  ...partsEaten(text, quantities),
  ...portionsOfIt(text, quantities),
  ...shares(text, quantities),
  ...perWord(text),
];

/** '1/6 of the dip': a share for which there is no name. */
function shares({ marks, tokens, language }: Text, all: readonly Quantity[]): Mark<'scope'>[] {
  return all.flatMap(({ said, fraction, low, unit, noun, begin, end }) => {
    if (said !== null || !fraction || low >= 1 || low === 1 / 2 || unit || noun) return [];
    const of = marks.at('ofThem', end);
    if (of) return [{ role: PART, from: begin, to: of.to }];
    const the = language.numbers.of.has(tokens[end]?.folded ?? '') && marks.at('filler', end + 1);
    return the ? [{ role: PART, from: begin, to: the.to + 1 }] : [];
  });
}

/** 'per lolly': whatever it is, one of them. */
function perWord({ marks, tokens }: Text): Mark<'scope'>[] {
  return marks.all('per').flatMap(({ from, to }) => {
    const known = marks.at('scope', from) ?? marks.at('perUnit', from) ?? marks.at('unit', to);
    const word = tokens[to];
    if (known || word?.kind !== 'word' || marks.at('noun', to)) return [];
    return [{ role: { cat: 'scope', scope: 'each', link: 'free' } as const, from, to: to + 1 }];
  });
}

/** '2 slices', 'two bowls' that are no count of what the dish makes: a part without a name. */
function partsEaten(text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] {
  return quantities.flatMap(({ said, unit, noun, low, begin, end }) => {
    const thing = text.marks.at('thing', end);
    if (said !== null || unit || noun || low < 2 || !thing || thing.role.as === 'person') return [];
    return [{ role: PART, from: begin, to: thing.to }];
  });
}

/** 'four portions at 320 calories': what follows is of one of them. */
function portionsOfIt(text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] {
  return quantities.flatMap(({ said, killed, from, end }, index) => {
    const next = quantities[index + 1];
    if (said?.kind !== 'portions' || killed !== null || !next) return [];
    // 'split six ways that's 498'
    // 'feeds four for a tenner' is the price of all.
    if (next.said?.kind === 'price' && text.marks.firstIn('serveTitle', end, next.begin)) return [];
    const ways = text.marks.at('serveBehind', end)?.to ?? end;
    if (
      next.begin - ways > 2 ||
      next.begin === end ||
      (next.said?.kind !== 'nutrient' && next.said?.kind !== 'price')
    )
      return [];
    if (
      !only(text, ways, next.begin, ways > end ? SHARED : ['lead', 'filler', 'small', 'joiner']) ||
      (text.tokens[end]?.kind !== 'word' && !/^[(@]$/.test(text.tokens[end]?.text ?? ''))
    )
      return [];
    const scope = said.unit === 'piece' ? 'each' : said.unit === 'slice' ? 'slice' : 'portion';
    return [{ role: { cat: 'scope', scope, link: 'free' }, from, to: end } as const];
  });
}

/** What may stand between a division and what one of its parts has. */
const SHARED = ['lead', 'filler', 'small', 'joiner', 'which', 'copula', 'so'] as const;

const PART = { cat: 'scope', scope: 'unknown', link: 'free' } as const;
