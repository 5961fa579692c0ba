import type { Mark } from '../words/marks';
import { endWithNoun, MOST_EATEN, type Quantity } from '../numbers/quantity';
import { partOf } from './by-counts';
import { only, type Text } from '../words/text';

type Part = Mark<'scope'>['role'];

/** Parts that no phrase of the language names: counted ones, shares, and those by a word that is in no table. */
export const unnamedParts = (text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] => [
  ...partsEaten(text, quantities),
  ...portionsOfIt(text, quantities),
  ...shares(text, quantities),
  ...sharesOfParts(text),
  ...eaten(text, quantities),
  ...oneOfThem(text, quantities),
  ...soManyFor(text, quantities),
  ...vesselsOf(text, quantities),
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

/** 'three quarters of a portion', 'a sixth of my tray': a share of a part by any word for it. */
function sharesOfParts({ marks, tokens, language }: Text): Mark<'scope'>[] {
  const { fractions, article, cardinals, half, of } = language.numbers;
  return tokens.flatMap(({ folded }, at) => {
    const one = fractions.get(folded) ?? fractions.get(language.singular(folded));
    const before = tokens[at - 1]?.folded ?? '';
    const counted = article.has(before) || cardinals.has(before);
    if (one === undefined || half.has(folded) || !counted) return [];
    if (!of.has(tokens[at + 1]?.folded ?? '') || tokens[at + 2]?.kind !== 'word') return [];
    const thing = marks.at('thing', at + 3) ?? marks.at('thing', at + 4);
    return thing ? [{ role: PART, from: at - 1, to: thing.to }] : [];
  });
}

/** 'so two is three seventy six', 'I take three so one seventy four': so many of what was said, a part without a name. */
function eaten({ marks }: Text, all: readonly Quantity[]): Mark<'scope'>[] {
  return all.flatMap(({ said, unit, noun, low, high, begin, end, fraction }, index) => {
    const next = all[index + 1];
    if (said !== null || unit || noun || fraction || low !== high || low < 2 || low > MOST_EATEN)
      return [];
    const led =
      marks.before('eat', begin) ?? marks.before('so', begin) ?? marks.before('joiner', begin);
    const link = marks.at('copula', end) ?? marks.at('so', end) ?? marks.at('which', end);
    const counts = next?.said?.kind === 'nutrient' && next.low > MOST_EATEN;
    return led && link && counts && next.begin - end <= 3
      ? [{ role: { ...PART, link: 'ahead' } as const, from: begin, to: end }]
      : [];
  });
}

/** Tokens from what was counted to what one of it has. */
const COUNTED = 16;

/** 'that makes six balls and one is 90 calories': one of what was just counted; of spoons nobody knows which part. */
function oneOfThem({ marks, tokens, language }: Text, all: readonly Quantity[]): Mark<'scope'>[] {
  return all.flatMap(({ said, begin }, index) => {
    const copula = marks.before('copula', begin);
    const one = (copula?.from ?? 0) - 1;
    if (!copula || said?.kind !== 'nutrient') return [];
    if (language.numbers.cardinals.get(tokens[one]?.folded ?? '') !== 1) return [];
    const led = marks.before('joiner', one) ?? marks.before('so', one);
    const counted = all
      .slice(Math.max(0, index - 3), index)
      .findLast(({ low, end, begin: at }) => low >= 2 && at < one && one - end <= COUNTED);
    if (!led || !counted) return [];
    const as = counted.said?.kind === 'portions' ? counted.said.unit : null;
    const scope =
      as === 'portion' || as === 'slice' ? as : as === 'piece' ? 'each' : ('unknown' as const);
    return [{ role: { cat: 'scope', scope, link: 'free' } as const, from: one, to: one + 1 }];
  });
}

/** '2 for 420 calories': so many of what the title counts. */
function soManyFor({ marks, tokens }: Text, all: readonly Quantity[]): Mark<'scope'>[] {
  return all.flatMap(({ said, unit, noun, low, high, begin, end, fraction }, index) => {
    const next = all[index + 1];
    const few = low === high && low >= 2 && low <= MOST_EATEN && Number.isInteger(low);
    if (said !== null || unit || noun || fraction || !few) return [];
    const linked = marks.at('serveTitle', end)?.to === next?.begin;
    // '38 g protein for three'
    const [before, lead] = [all[index - 1], marks.before('serveTitle', begin)];
    const behind = before && endWithNoun(before) === lead?.from;
    if (lead && behind && before.said?.kind === 'nutrient' && tokens[end]?.kind !== 'word')
      return [{ role: { ...PART, link: 'behind' } as const, from: lead.from, to: end }];
    return linked && next?.said?.kind === 'nutrient' ? [{ role: PART, from: begin, to: end }] : [];
  });
}

/** 'batch of 18: 1,692 kcal', 'the tray of nine you are looking at': all of it, with how many that is. */
function vesselsOf({ marks, tokens, language }: Text, all: readonly Quantity[]): Mark<'scope'>[] {
  return all.flatMap(({ said, unit, noun, begin, end }) => {
    if ((said !== null && said.kind !== 'portions') || unit || noun) return [];
    if (!language.numbers.of.has(tokens[begin - 1]?.folded ?? '')) return [];
    const vessel = marks.before('thing', begin - 1);
    return vessel?.role.as === 'whole' ? [{ role: WHOLE, from: vessel.from, to: end }] : [];
  });
}

/** 'per lolly': whatever it is, one of them. */
function perWord({ marks, tokens, language }: Text): Mark<'scope'>[] {
  return marks.all('per').flatMap(({ from, to }) => {
    const known = marks.at('scope', from) ?? marks.at('perUnit', from) ?? marks.at('unit', to);
    const word = tokens[to];
    if (known || word?.kind !== 'word' || marks.at('noun', to)) return [];
    if (language.numbers.cardinals.has(word.folded)) return [];
    return [{ role: { cat: 'scope', scope: 'each', link: 'free' } as const, from, to: to + 1 }];
  });
}

/** '2 slices', 'two bowls' that are no count of what the dish makes: a part without a name. */
function partsEaten(text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] {
  return quantities.flatMap(({ said, unit, noun, low, begin, end }) => {
    const thing = text.marks.at('thing', end);
    // 'per forty gram serving'
    const weighed = unit?.of === 'mass' && thing?.role.as === 'portion';
    if (weighed) return [{ role: PORTION, from: begin, to: thing.to }];
    if (said !== null || unit || noun || low < 2 || !thing || thing.role.as === 'person') return [];
    return [{ role: PART, from: begin, to: thing.to }];
  });
}

/** 'four portions at 320 calories': what follows is of one of them. */
function portionsOfIt(text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] {
  return quantities.flatMap(({ said, killed, from, end }, index) => {
    const [before, next] = [quantities[index - 1], quantities[index + 1]];
    if (said?.kind !== 'portions' || killed !== null) return [];
    // 'five pounds for four portions', 'a fiver for the four of us'
    const forAll = before?.said?.kind === 'price' && text.marks.at('serveTitle', before.end);
    const the = forAll && (text.marks.at('filler', forAll.to)?.to ?? forAll.to);
    const fed = text.context.form !== 'title' && text.marks.before('thing', end) !== undefined;
    if (forAll && the === from && (fed || isThing(text, end)))
      return [{ role: { ...WHOLE, link: 'behind' }, from: forAll.from, to: end }];
    if (!next) return [];
    // 'dinner for two is a tenner'
    const all = text.marks.before('serveTitle', from) && text.marks.at('copula', end);
    if (all && next.said?.kind === 'price') return [{ role: WHOLE, from, to: end }];
    // 'split six ways that's 498'
    // 'feeds four for a tenner' is the price of all.
    if (next.said?.kind === 'price' && text.marks.firstIn('serveTitle', end, next.begin))
      return isThing(text, end) ? [{ role: WHOLE, from, to: end }] : [];
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
    // 'chili for 6 (under $10)'
    if (next.said.kind === 'price' && text.tokens[end]?.text === '(') return [];
    const role = { cat: 'scope', scope: partOf(said.unit), link: 'free' } as const;
    return [{ role, from, to: end }];
  });
}

/** Whether what was counted ends before a token, and is no person. */
function isThing({ marks }: Text, to: number): boolean {
  const as = marks.before('thing', to)?.role.as;
  return as !== undefined && as !== 'person';
}

/** What may stand between a division and what one of its parts has. */
const SHARED = ['lead', 'filler', 'small', 'joiner', 'which', 'copula', 'so'] as const;

const PART: Part = { cat: 'scope', scope: 'unknown', link: 'free' };

const PORTION: Part = { cat: 'scope', scope: 'portion', link: 'free' };

const WHOLE: Part = { cat: 'scope', scope: 'whole', link: 'free' };
