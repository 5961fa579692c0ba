import type { Mark } from '../words/marks';
import type { Text } from '../words/text';
import { isDishWord } from '../words/dish-word';

type Part = Mark<'scope'>['role'];

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Words of the name of a dish, and words that say which, up to its verb. */
const NAME = 4;
const DESCRIBED = 5;

/**
 * Dishes of others that no phrase of the language names whole: 'the vending machine flapjack is', 'mum's brownies are',
 * 'the pie I grew up on was', 'the one in the petrol station has', 'the pub version with chips is'.
 * @param dishes where dishes of the episode are named
 */
export const otherDishes = (text: Text, dishes: readonly Stretch[]): Mark<'scope'>[] =>
  [
    ...otherKinds(text),
    ...usualKinds(text),
    ...ofOthers(text),
    ...hadElsewhere(text),
    ...described(text),
    ...theOne(text),
  ].filter(({ from, to }) => !overlaps(dishes, from, to));

/** Whether one of a row of stretches, in their order, shares a token with another. */
function overlaps(row: readonly Stretch[], from: number, to: number): boolean {
  let [low, high] = [0, row.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle]?.to ?? 0) <= from) low = middle + 1;
    else high = middle;
  }
  return (row[low]?.from ?? Infinity) < to;
}

/** 'the pork version', 'the lentil one', where the title has no such food: another dish. */
function otherKinds(text: Text): Mark<'scope'>[] {
  const { marks, tokens, language, context } = text;
  const title = (context.dish ?? '').toLowerCase();
  return marks.all('kindOf').flatMap(({ from, to }) => {
    const word = tokens[from - 1];
    const the = tokens[from - 2]?.folded ?? '';
    if (context.dish === undefined || word?.kind !== 'word') return [];
    if (!language.numbers.pointers.has(the)) return [];
    // 'no sorry I'm reading the lentil one'
    if (marks.before('mistook', from - 2)) return [];
    const { heads, modifiers, plain } = language.foods;
    const food = heads.has(word.folded) || modifiers.has(word.folded);
    if (!food || plain.has(word.folded) || title.includes(word.folded)) return [];
    return [{ role: OTHER, from: from - 2, to }];
  });
}

/** 'a normal bean stew', 'the takeaway chicken curry': a dish of others. */
function usualKinds({ marks, tokens, language }: Text): Mark<'scope'>[] {
  const { article, pointers } = language.numbers;
  return marks.all('usual').flatMap(({ from, to }) => {
    const before = tokens[from - 1]?.folded ?? '';
    if (!article.has(before) && !pointers.has(before)) return [];
    for (let at = to; at < to + NAME && tokens[at]?.kind === 'word'; at += 1) {
      const word = tokens[at]?.folded ?? '';
      const piece = marks.at('thing', at)?.role.as === 'piece';
      if (isDishWord(word, language) || piece) return [{ role: OTHER, from: from - 1, to: at + 1 }];
    }
    return [];
  });
}

/** 'the hotel breakfast was', 'my gran's hotpot is': up to the verb, without any part of a dish. */
function ofOthers(text: Text): Mark<'scope'>[] {
  const { marks, tokens, language, context } = text;
  const { article, pointers } = language.numbers;
  const titles = [context.dish, ...(context.dishes ?? [])].join(' ').toLowerCase();
  return marks.all('elsewhere').flatMap(({ from, to, role }) => {
    const before = tokens[from - 1]?.folded ?? '';
    const led = article.has(before) || pointers.has(before);
    if (role.as === 'place' && !led) return [];
    // 'Gran's hotpot' is what this dish is called.
    if (role.as === 'owner' && titles.includes((tokens[to - 1]?.text ?? '').toLowerCase()))
      return [];
    const end = verbBehind(text, to, NAME);
    if (end === null || end === to) return [];
    return [{ role: OTHER, from: led && role.as === 'place' ? from - 1 : from, to: end }];
  });
}

/** 'the fish pie I grew up on', 'the one in the petrol station'; any food only where nothing else may be meant. */
function hadElsewhere(text: Text): Mark<'scope'>[] {
  const { marks, tokens, language } = text;
  return marks.all('elsewhereBehind').flatMap(({ from, to, role }) => {
    if (verbBehind(text, to, DESCRIBED) === null) return [];
    const word = tokens[from - 1]?.folded ?? '';
    const one = marks.before('kindOf', from) !== undefined;
    const dish = isDishWord(word, language);
    const vessel = (marks.before('thing', from) ?? marks.before('pack', from)) !== undefined;
    if (role.any !== true && !one && !dish && !vessel) return [];
    for (let at = from - 1; at >= from - NAME; at -= 1) {
      const { article, pointers } = language.numbers;
      const first = tokens[at]?.folded ?? '';
      if (tokens[at]?.kind !== 'word') return [];
      if (article.has(first) || pointers.has(first)) return [{ role: OTHER, from: at, to }];
    }
    return [];
  });
}

/** 'the one off the truck is': one that words behind it tell from this. */
function theOne(text: Text): Mark<'scope'>[] {
  const { marks, tokens, language } = text;
  return marks.all('kindOf').flatMap(({ from, to }) => {
    const led = language.numbers.pointers.has(tokens[from - 1]?.folded ?? '');
    const where = marks.at('whereWord', to);
    const end = where && verbBehind(text, where.to, NAME);
    if (!led || !where || !end || end === where.to) return [];
    return [{ role: OTHER, from: from - 1, to: end }];
  });
}

/** 'the pub version with chips is around 900': what is known goes on to its verb. */
function described(text: Text): Mark<'scope'>[] {
  return text.marks.all('scope').flatMap(({ role, from, to }) => {
    if (role.scope !== 'compared' || role.link !== 'free') return [];
    const end = verbBehind(text, to, DESCRIBED);
    return end === null || end === to ? [] : [{ role: OTHER, from, to: end }];
  });
}

/** The token at which a verb stands behind a few words that are no part, number or new clause; null where none does. */
function verbBehind({ marks, tokens, language }: Text, from: number, most: number): number | null {
  for (let at = from; at <= from + most; at += 1) {
    if (marks.at('copula', at) ?? marks.at('was', at)) return at;
    const token = tokens[at];
    if (token?.kind !== 'word' || language.numbers.cardinals.has(token.folded)) return null;
    const part = marks.at('thing', at)?.role.as;
    if (part === 'portion' || part === 'slice' || part === 'person') return null;
    if (marks.at('joiner', at) && !marks.at('use', at)) return null;
    if (marks.at('so', at) ?? marks.at('noun', at) ?? marks.at('now', at)) return null;
  }
  return null;
}

const OTHER: Part = { cat: 'scope', scope: 'compared', link: 'free', against: 'itsOwn' };
