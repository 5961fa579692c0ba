import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { sentenceEnd, sentenceStart } from '../words/context';
import { phraseAt } from '../words/phrases';
import type { Noun } from '../numbers/quantity';
import type { Claim, NutrientUnit } from '../statement';
import type { Text } from '../words/text';
import { isDish, isDishWord } from '../words/dish-word';

/** A claim word with the nutrient it is made of. */
export interface ClaimAt {
  readonly from: number;
  readonly to: number;
  readonly claim: Claim;
  readonly nutrient?: Nutrient;
}

/**
 * The words by which a food is sold: 'high protein', 'low in fat', 'sugar free', 'light'. Those in the name of an
 * ingredient, denied or asked are left out of `said`; `taken` has the tokens of all.
 */
export function claimsOf(text: Text): {
  readonly said: readonly ClaimAt[];
  readonly taken: ReadonlySet<number>;
  /** The nutrients of all of them, which a number behind may count: 'high fibre, eleven grams'. */
  readonly nouns: readonly Noun[];
} {
  const said: ClaimAt[] = [];
  const taken = new Set<number>();
  const nouns: Noun[] = [];
  for (let at = 0; at < text.tokens.length;) {
    const claim = claimAt(text, at);
    if (!claim) {
      at += 1;
      continue;
    }
    for (let token = claim.from; token < claim.to; token += 1) taken.add(token);
    const { nutrient, from, to } = claim;
    if (nutrient !== undefined)
      nouns.push({
        nutrient,
        unit: NUTRIENTS[nutrient].unit as NutrientUnit,
        from,
        to,
        claimed: true,
      });
    const kept = holds(text, claim, isAtStart(text, claim, taken));
    if (kept) said.push(claim);
    at = claim.to;
    const more = claim.nutrient === undefined ? null : sharedAt(text, claim);
    if (!more) continue;
    for (let token = more.from; token < more.to; token += 1) taken.add(token);
    if (kept) said.push(more);
    at = more.to;
  }
  return { said, taken, nouns };
}

/** 'high in protein and fibre': the second nutrient of one claim. */
function sharedAt(text: Text, { from, to, claim }: ClaimAt): ClaimAt | null {
  const { tokens, marks, language } = text;
  if (!language.numbers.and.has(tokens[to]?.folded ?? '') && tokens[to]?.text !== '&') return null;
  const noun = marks.at('noun', to + 1);
  const lead = phraseAt(language.claims.before, tokens, from);
  if (!noun || !lead || !marks.at('noun', lead.next)) return null;
  if (phraseAt(language.claims.behind, tokens, noun.to) || tokens[noun.to]?.kind === 'number')
    return null;
  return { from: to + 1, to: noun.to, claim, nutrient: noun.role.nutrient };
}

function claimAt(text: Text, at: number): ClaimAt | null {
  const { tokens, marks, language } = text;
  const { before, behind, alone } = language.claims;
  // '40 percent less fat' is a number.
  const share = marks.before('unit', at)?.role.of === 'share';
  const lead = share ? null : phraseAt(before, tokens, at);
  const noun = lead && marks.at('noun', lead.next);
  if (lead && noun) {
    const more = phraseAt(behind, tokens, noun.to);
    if (lead.value === 'free' && more?.value !== 'noAdded') return null;
    const claim = more?.value === 'noAdded' ? 'noAdded' : lead.value;
    const nutrient = noun.role.nutrient === 'addedSugars' ? 'sugars' : noun.role.nutrient;
    return { from: at, to: more?.next ?? noun.to, claim, nutrient };
  }
  const own = marks.at('noun', at);
  const said = own && phraseAt(behind, tokens, own.to);
  if (own && said && said.value !== 'noAdded' && !isNumber(text, at - 1)) {
    return { from: at, to: said.next, claim: said.value, nutrient: own.role.nutrient };
  }
  const word = phraseAt(alone, tokens, at);
  return word && standsAlone(text, at, word.next)
    ? { from: at, to: word.next, claim: word.value }
    : null;
}

const isNumber = ({ tokens }: Text, at: number) => tokens[at]?.kind === 'number';

/** 'light' and 'lean' are claims where the dish is said to be so: 'it's light', 'light leek soup'. */
function standsAlone(text: Text, from: number, to: number): boolean {
  const { tokens, language, marks } = text;
  const { aloneAfter, dishes } = language.claims;
  const before = tokens[from - 1];
  const starts = from === sentenceStart(text, from) || before?.kind === 'mark';
  const next = tokens[to];
  const ends = to >= sentenceEnd(text, from) || next?.kind !== 'word';
  const dish =
    isTitleHead(text, to) ||
    isTitleHead(text, to + 1) ||
    dishes.has(next?.folded ?? '') ||
    dishes.has(tokens[to + 1]?.folded ?? '');
  if (marks.at('unit', to)) return false;
  if (starts) return dish || (ends && text.context.form !== 'captions');
  if (!aloneAfter.has(before?.folded ?? '') && !isSaidOfDish(text, from)) return false;
  const goesOn = marks.at('joiner', to) ?? marks.at('copula', to) ?? marks.at('so', to);
  return dish || ends || goesOn !== undefined;
}

/** 'is light' of the dish, 'this one is really light'; not of a leg. */
function isSaidOfDish(text: Text, from: number): boolean {
  const { tokens, language, marks } = text;
  let at = from;
  while (language.claims.degree.has(tokens[at - 1]?.folded ?? '')) at -= 1;
  if (at < from && language.claims.aloneAfter.has(tokens[at - 1]?.folded ?? '')) return true;
  const copula = marks.before('copula', at);
  if (!copula) return false;
  if (language.claims.subjects.has(tokens[copula.from]?.folded ?? '')) return true;
  const subject = tokens[copula.from - 1]?.folded ?? '';
  return (
    language.claims.subjects.has(subject) ||
    language.claims.dishes.has(subject) ||
    isTitleHead(text, copula.from - 1)
  );
}

/** Whether a token is the last word of a title. */
function isTitleHead({ titles, tokens, language }: Text, at: number): boolean {
  const word = language.singular(tokens[at]?.folded ?? '');
  return word.length >= 3 && titles.some(({ stems }) => stems.at(-1) === word);
}

/** Whether nothing but claims stands before one in a title: 'Low Calorie, High Protein Cheesecake'. */
function isAtStart({ context, marks }: Text, { from }: ClaimAt, taken: ReadonlySet<number>) {
  if (context.form !== 'title' || from > FIRST) return false;
  for (let at = 0; at < from; at += 1) if (!taken.has(at) && !marks.at('joiner', at)) return false;
  return true;
}

/** Tokens of the claims that a title begins with. */
const FIRST = 12;

/** 'low calorie it is not', 'sugar free, no, as a banana is a banana'. */
function isDeniedBehind({ tokens, language }: Text, { to }: ClaimAt): boolean {
  const at = tokens[to]?.text === ',' ? to + 1 : to;
  const denied = phraseAt(language.claims.deniedBehind, tokens, at);
  if (!denied) return false;
  return denied.value === 'always' || (at > to && tokens[denied.next]?.kind !== 'word');
}

function holds(text: Text, claim: ClaimAt, first: boolean): boolean {
  const { tokens, language, sentences, marks } = text;
  const { denied, asked, dishes } = language.claims;
  for (let back = 1; back <= 2; back += 1) {
    if (denied.has(tokens[claim.from - back]?.folded ?? '') && claim.claim !== 'noAdded')
      return false;
  }
  // 'I would not call it a light dish'
  if (isNotCalled(text, claim.from)) return false;
  for (let back = 2; back <= 5; back += 1) {
    const found = phraseAt(asked, tokens, claim.from - back);
    if (found && found.next >= claim.from - 2 && found.next <= claim.from) return false;
  }
  if (isDeniedBehind(text, claim)) return false;
  // '12 grams less fat': a number set against something.
  if (claim.claim === 'reduced' && marks.before('unit', claim.from)) return false;
  if (sentences.asked[sentences.of[claim.from] ?? 0] && isLastPart(text, claim)) return false;
  const than = marks.at('thanWord', claim.to);
  if (than && (claim.claim === 'reduced' || claim.claim === 'low' || claim.claim === 'high'))
    return false;
  // 'a third less fat' is a number.
  const times = marks.lastIn('times', claim.from - 3, claim.from + 1);
  if (times && times.to > claim.from) return false;
  const next = marks.at('noun', claim.to);
  if (next && phraseAt(language.claims.behind, tokens, next.to)) return true;
  if (first) return true;
  const food = text.food(claim.to);
  // 'a no added sugar ketchup': what a food is called; 'no added sugar. Oats go in' ends before it.
  const named = claim.claim === 'noAdded' && text.spoken === false && isOfFood(text, claim);
  if (named) return false;
  if (!food || claim.claim === 'noAdded' || claim.nutrient === undefined) return true;
  // 'high protein bean stew'
  if (dishes.has(tokens[food.to]?.folded ?? '') || isTitleHead(text, food.to)) return true;
  const head = tokens[food.to - 1]?.folded ?? '';
  return isDishWord(head, language) || isTitleHead(text, food.to - 1);
}

/** Tokens from 'not call it' to what it is not called. */
const CALLED = 3;

function isNotCalled({ marks }: Text, from: number): boolean {
  const call = marks.lastIn('called', from - CALLED - 1, from);
  return call !== undefined;
}

/** Whether an article leads what is claimed, and a food that is no dish follows: 'a no added sugar ketchup'. */
function isOfFood(text: Text, { from, to }: ClaimAt): boolean {
  const food = text.food(to);
  const one = text.language.numbers.article.has(text.tokens[from - 1]?.folded ?? '');
  return one && food !== null && food.from - to <= 1 && !isDish(text, food.name);
}

/** Behind the last comma before a question mark. */
function isLastPart({ tokens, sentences }: Text, { from }: ClaimAt): boolean {
  const end = sentences.starts[(sentences.of[from] ?? 0) + 1] ?? tokens.length;
  return !tokens.slice(from, end).some(({ text: mark }) => mark === ',');
}
