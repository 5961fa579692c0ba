import { chainLead } from './caption-chains';
import type { Language, Role } from '../language';
import { groupAt } from '../numbers/number-words';
import { phraseAt } from './phrases';
import type { Token } from './tokens';
import { saysNumber } from './says-number';

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
  const number = (at: number) => saysNumber(tokens[at], language) || hundreds(at);
  const next = stop + 1;
  if (numbers.and.has(word(stop - 1)) && hundreds(stop - 2) && number(next)) return true;
  // 'a dollar. Eighty five a bowl'
  if (number(next) && leadsTo(tokens, stop, language, ['unit']))
    return isCents(tokens, stop, language);
  if (number(stop - 1)) {
    if (hundreds(next)) return true;
    if (hundreds(stop - 1) && numbers.and.has(word(next)) && number(next + 1)) return true;
    // 'three hundred. Sixty five calories'
    if (hundreds(stop - 1) && isBelowHundred(tokens, next, language)) return true;
    // 'there is. forty. One grams.': cut between tens and ones, in a text that is cut before them as well.
    const ones = numbers.cardinals.get(word(next)) ?? 0;
    const tens = numbers.cardinals.get(word(stop - 1)) ?? 0;
    const cut = tens >= 20 && tens % 10 === 0 && ones > 0 && ones < 10;
    if (cut && (tokens[stop - 2]?.text === '.' || isCutAround(tokens, stop, language))) return true;
    const counted = phraseOf(tokens, next, language, COUNTED);
    if (counted !== null && tokens[counted]?.text === '.') {
      const lead = chainLead(tokens, stop, language);
      if (lead !== null) return lead === 'number';
    }
    // 'forty. Fat is eleven.': the noun begins what follows.
    const part = counted === null ? null : phraseOf(tokens, counted, language, ['scope']);
    // 'Thirty one. Fat? Nine.', 'thirty one. Nine. Protein and fat.'
    if (counted !== null && (tokens[counted]?.text === '?' || namesMore(tokens, counted, language)))
      return false;
    const goesOn = counted === null || number(counted) || (part !== null && number(part));
    return !goesOn && phraseOf(tokens, counted, language, ['copula']) === null;
  }
  // 'calories. Four ten. Protein. Thirty one.'
  if (number(next) && leadsTo(tokens, stop, language, ['noun']))
    return chainLead(tokens, stop, language) === 'noun';
  // 'thirty one grams. Protein. Nine grams. Fat.'
  if (
    phraseOf(tokens, next, language, ['noun']) !== null &&
    leadsTo(tokens, stop, language, ['unit'])
  )
    return chainLead(tokens, stop, language) === 'number';
  if (numbers.of.has(word(next)) && leadsTo(tokens, stop, language, ['unit'])) return true;
  if (number(next) && leadsTo(tokens, stop, language, LEADS)) return true;
  const part = phraseOf(tokens, next, language, ['scope']);
  return (
    part !== null &&
    (part === tokens.length || tokens[part]?.text === '.') &&
    leadsTo(tokens, stop, language, COUNTED)
  );
}

/** Tokens around a full stop in which another one may stand where no sentence ends. */
const AROUND = 24;

/** 'there's thirty. Six grams of protein. Which is. Like.': led to, counting something, in captions that are cut anywhere. */
function isCutAround(tokens: readonly Token[], stop: number, language: Language): boolean {
  const { and, hundred, of } = language.numbers;
  const led =
    and.has(tokens[stop - 2]?.folded ?? '') ||
    leadsTo(tokens, stop - 1, language, ['copula', 'hedge', 'filler']);
  if (!led || phraseOf(tokens, stop + 2, language, COUNTED) === null) return false;
  for (
    let at = Math.max(1, stop - AROUND);
    at < Math.min(tokens.length - 1, stop + AROUND);
    at += 1
  ) {
    if (at === stop || tokens[at]?.text !== '.' || tokens[at + 1]?.glued) continue;
    const next = tokens[at + 1]?.folded ?? '';
    if (hundred.has(next) || of.has(next) || leadsTo(tokens, at, language, ['copula'])) return true;
  }
  return false;
}

/** Whether another noun follows, so that the one before it is one of a row. */
function namesMore(tokens: readonly Token[], at: number, language: Language): boolean {
  const next = phraseOf(tokens, at, language, ['joiner']) ?? at;
  return phraseOf(tokens, next, language, ['noun']) !== null;
}

/** A number below a hundred that counts energy: alone it would be that of no dish. */
function isBelowHundred(tokens: readonly Token[], at: number, language: Language): boolean {
  const group = groupAt(tokens, at, language.numbers);
  const roles = group && phraseAt(language.lexicon, tokens, group.next)?.value;
  return roles?.some((role) => role.cat === 'noun' && role.nutrient === 'energyKcal') === true;
}

/** Cents behind whole money, with a part behind them. */
function isCents(tokens: readonly Token[], stop: number, language: Language): boolean {
  const roles = phraseAt(language.lexicon, tokens, stop - 1)?.value;
  const money = roles?.some((role) => role.cat === 'unit' && role.of === 'money') === true;
  const group = groupAt(tokens, stop + 1, language.numbers);
  return money && group !== null && phraseOf(tokens, group.next, language, ['scope']) !== null;
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
