import type { FreeOf } from '../free-from-words';
import { isDishWord } from '../words/dish-word';
import { phraseAt } from '../words/phrases';
import type { Text } from '../words/text';

/** Words that say that a dish is free of something. */
export interface FreeFromAt {
  readonly from: number;
  readonly to: number;
  readonly of: FreeOf;
  /** It may be said of an ingredient. */
  readonly unsure: boolean;
}

/** Tokens before such words in which something may make them a choice or a wish. */
const REACH = 8;

/**
 * What a text says a dish is free of: 'nut free', 'no egg in these', 'without dairy', 'vegan'. Denials, choices,
 * questions, people who eat so and names of ingredients are left out of `said`; `taken` has the tokens of all.
 * @example freeFromOf(prepare('these are nut free', …)).said[0]?.of // { from: ['treeNuts', 'peanuts'] }
 */
export function freeFromOf(text: Text): {
  readonly said: readonly FreeFromAt[];
  readonly taken: ReadonlySet<number>;
} {
  const said: FreeFromAt[] = [];
  const taken = new Set<number>();
  for (let at = 0; at < text.tokens.length;) {
    const found = wordsAt(text, at);
    if (!found) {
      at += 1;
      continue;
    }
    for (let token = found.from; token < found.to; token += 1) taken.add(token);
    const holds = holding(text, found);
    if (holds !== null) {
      const { from, to, of } = found;
      said.push({ from, to, of, unsure: holds === 'unsure' });
    }
    at = found.to;
  }
  return { said, taken };
}

interface Words {
  readonly from: number;
  readonly to: number;
  readonly of: FreeOf;
  /** How it is said: before the name, or behind it or in one word. */
  readonly by: 'sure' | 'own' | 'loose' | 'word';
}

function wordsAt(text: Text, at: number): Words | null {
  const { tokens, language } = text;
  const { before, alone, behind, notBehind } = language.freeFrom;
  const lead = phraseAt(before, tokens, at);
  const named = lead && namesAt(text, lead.next);
  if (lead && named && !isCompound(text, named) && !behind.has(folded(text, named.to))) {
    return { from: at, to: named.to, of: named.of, by: lead.value };
  }
  const names = namesAt(text, at);
  if (names && behind.has(folded(text, names.to)) && !notBehind.has(folded(text, names.to + 1))) {
    return { from: at, to: names.to + 1, of: names.of, by: 'word' };
  }
  const word = phraseAt(alone, tokens, at);
  return word && { from: at, to: word.next, of: word.value, by: 'word' };
}

const folded = ({ tokens }: Text, at: number): string => tokens[at]?.folded ?? '';

interface Names {
  readonly last: number;
  readonly to: number;
  readonly of: FreeOf;
}

/** 'gluten', 'nuts, dairy or eggs'; nutrients may stand among them: 'dairy and sugar free'. */
function namesAt(text: Text, at: number): Names | null {
  const { tokens, language, marks } = text;
  const { names, joined } = language.freeFrom;
  const first = phraseAt(names, tokens, at);
  if (!first) return null;
  let found: Names = { last: at, to: first.next, of: first.value };
  for (;;) {
    let next = found.to;
    while (next < found.to + 2 && joined.has(folded(text, next))) next += 1;
    if (next === found.to) return found;
    const more = phraseAt(names, tokens, next);
    const to = more?.next ?? marks.at('noun', next)?.to;
    if (to === undefined) return found;
    found = { last: next, to, of: more ? bothOf(found.of, more.value) : found.of };
  }
}

function bothOf(one: FreeOf, other: FreeOf): FreeOf {
  const diet = one.diet ?? other.diet;
  const from = [...new Set([...one.from, ...other.from])];
  return diet === undefined ? { from } : { from, diet };
}

/** 'no egg noodles' says nothing of eggs. */
function isCompound(text: Text, { last, to }: Names): boolean {
  const food = text.food(last);
  if (food && food.from <= last && food.to > to) return true;
  return text.language.freeFrom.compounds.has(folded(text, to));
}

function holding(text: Text, words: Words): 'said' | 'unsure' | null {
  const { sentences } = text;
  if (sentences.asked[sentences.of[words.from] ?? 0]) return null;
  if (isDenied(text, words) || isChoice(text, words) || isOfPeople(text, words)) return null;
  if (isConditional(text, words)) return null;
  if (words.by === 'word') return ofDish(text, words);
  if (words.by === 'own' && isLeftOut(text, words)) return null;
  if (words.by === 'loose' && !isSaidOfIt(text, words)) return null;
  return subjectOf(text, words);
}

function isDenied(text: Text, { from, to }: Words): boolean {
  const { language, tokens } = text;
  const { denied, only } = language.freeFrom;
  for (let back = 1; back <= 2; back += 1) {
    const at = from - back;
    if (tokens[at]?.kind === 'mark') break;
    if (denied.has(folded(text, at)) && !only.has(folded(text, at + 1))) return true;
  }
  const next = folded(text, to) === ',' ? to + 1 : to;
  const behind = phraseAt(language.claims.deniedBehind, tokens, next);
  return behind?.value === 'always';
}

/** 'you can make it dairy free', 'check that it's gluten free', 'if you are vegan', 'is it nut free'. */
function isChoice(text: Text, { from }: Words): boolean {
  const { language, tokens, sentences, marks } = text;
  const { choices, doubts } = language.freeFrom;
  const sentence = sentences.of[from];
  for (let at = from - 1; at >= Math.max(0, from - REACH); at -= 1) {
    if (sentences.of[at] !== sentence || tokens[at]?.kind === 'mark') return false;
    const asked = phraseAt(language.claims.asked, tokens, at);
    if (asked && asked.next <= from && asked.next >= from - 2) return true;
    if (isSubject(text, at, from)) return endsIn(text, at, doubts);
    const choice = phraseAt(choices, tokens, at);
    if (choice && choice.next <= from && !isSubjectAhead(text, at, from)) return true;
    if (marks.at('so', at)) return false;
  }
  return false;
}

/** 'it's', 'these are', 'there's': begins what is said, where 'make it' has it for its object. */
function isSubject(text: Text, at: number, from: number): boolean {
  const { language, marks, tokens } = text;
  if (!language.freeFrom.subjects.has(folded(text, at))) return false;
  if (/['’]/.test(tokens[at]?.text ?? '') || language.freeFrom.withVerb.has(folded(text, at)))
    return true;
  const copula = marks.at('copula', at + 1);
  return copula !== undefined && copula.to <= from;
}

/** Whether a subject stands between a word and what is said: 'the oil you use and it's vegan'. */
function isSubjectAhead(text: Text, at: number, from: number): boolean {
  for (let next = at + 1; next < from; next += 1) if (isSubject(text, next, from)) return true;
  return false;
}

/** Whether one of some phrases stands right before a token, with a word or two between. */
function endsIn({ tokens }: Text, at: number, phrases: Parameters<typeof phraseAt>[0]): boolean {
  for (let back = at - 1; back >= Math.max(0, at - 4); back -= 1) {
    if (tokens[back]?.kind === 'mark') return false;
    const found = phraseAt(phrases, tokens, back);
    if (found && found.next <= at && found.next >= at - 1) return true;
  }
  return false;
}

/** 'vegan if you leave the feta out'; 'nut free if you need that' is said of the dish. */
function isConditional(text: Text, { to }: Words): boolean {
  const { language, tokens } = text;
  const { conditions, forWhom } = language.freeFrom;
  for (let at = to; at <= to + 1; at += 1) {
    const found = phraseAt(conditions, tokens, at);
    if (found) return !forWhom.has(folded(text, found.next));
    if (tokens[at]?.kind !== 'word' || !language.freeFrom.only.has(folded(text, at))) return false;
  }
  return false;
}

/** 'I'm vegan', 'my sister is gluten free', 'vegan friends', 'we've got no eggs'. */
function isOfPeople(text: Text, { from, to }: Words): boolean {
  const { language } = text;
  const { people, others } = language.freeFrom;
  const isPerson = (at: number) => {
    const word = folded(text, at);
    return people.has(word) || people.has(language.singular(word));
  };
  const next = folded(text, to);
  // 'gluten free you won't notice' goes on with somebody else.
  const goesOn =
    language.claims.doers.has(next) || (people.has(next) && language.claims.persons.has(next));
  if ((isPerson(to) && !goesOn) || others.has(next)) return true;
  const start = behindDegree(text, from);
  if (isPerson(start - 1)) return true;
  const copula = text.marks.before('copula', start);
  return copula !== undefined && (isPerson(copula.from) || isPerson(copula.from - 1));
}

/** The token behind which only words of degree stand before another. */
function behindDegree(text: Text, from: number): number {
  const { freeFrom, claims } = text.language;
  let at = from;
  while (freeFrom.degree.has(folded(text, at - 1)) || claims.degree.has(folded(text, at - 1)))
    at -= 1;
  return at;
}

/** Whether 'gluten free' is said of the dish, and not in the name of an ingredient or of another kind of it. */
function ofDish(text: Text, words: Words): 'said' | 'unsure' | null {
  const { language } = text;
  const { from, to } = words;
  const pointed = isPointedAt(text, from);
  if (language.freeFrom.versions.has(folded(text, to))) return pointed ? 'said' : null;
  const food = text.food(to);
  if (food && !isDishNamed(text, food.to)) return pointed ? 'unsure' : null;
  if (food && text.marks.before('unit', from)) return null;
  return subjectOf(text, words);
}

/** 'it's', 'this is a': right before words, with nothing but a degree between. */
function isPointedAt(text: Text, from: number): boolean {
  const start = behindDegree(text, from);
  for (let at = Math.max(0, start - 2); at < start; at += 1) {
    const points = text.language.claims.pointing.has(folded(text, at));
    if (points && isSubject(text, at, start)) return true;
  }
  return false;
}

/** Whether a food that ends at a token is the dish, or a kind of dish: 'vegan brownies', 'gluten free bean stew'. */
function isDishNamed(text: Text, to: number): boolean {
  return [to - 1, to].some((at) => isTitleHead(text, at) || isKindOfDish(text, at));
}

/** 'soup'; 'pasta' only in a title, since it goes into other dishes too. */
function isKindOfDish({ tokens, language }: Text, at: number): boolean {
  const word = tokens[at]?.folded ?? '';
  return isDishWord(word, language) && !language.freeFrom.asIngredients.has(word);
}

function isTitleHead({ titles, tokens, language }: Text, at: number): boolean {
  const word = language.singular(tokens[at]?.folded ?? '');
  return word.length >= 3 && titles.some(({ stems }) => stems.at(-1) === word);
}

/** 'the oats are gluten free', 'tamari, which has no wheat' is said of a food; 'tamari that's gluten free' may be. */
function subjectOf(text: Text, { from }: Words): 'said' | 'unsure' | null {
  const { marks, tokens, language } = text;
  let at = behindDegree(text, from);
  const own = tokens[at - 1];
  if (own && /['’]s$/.test(own.text) && isFoodBefore(text, at)) return null;
  const copula = marks.before('copula', at);
  const said = folded(text, copula?.from ?? at);
  if (copula) at = copula.from;
  else if (!language.freeFrom.before.next.has(folded(text, from))) return 'said';
  while (language.freeFrom.relative.has(folded(text, at - 1))) at -= 1;
  if (at < (copula?.from ?? from) && folded(text, at - 1) === ',') at -= 1;
  if (!isFoodBefore(text, at)) return 'said';
  return language.freeFrom.withVerb.has(said) ? 'unsure' : null;
}

/** Whether the name of a food that is not the dish ends at a token. */
function isFoodBefore(text: Text, to: number): boolean {
  if (isTitleHead(text, to - 1) || isKindOfDish(text, to - 1)) return false;
  for (let at = Math.max(0, to - 4); at < to; at += 1) {
    const food = text.food(at);
    if (food?.to === to) return true;
  }
  return false;
}

/** 'without nuts it's 300 calories', 'without eggs it would': how it would be. */
function isLeftOut({ marks, language, tokens }: Text, { to }: Words): boolean {
  const at = tokens[to]?.text === ',' ? to + 1 : to;
  const word = tokens[at]?.folded ?? '';
  if (!language.claims.pointing.has(word) && !language.claims.would.has(word)) return false;
  return tokens[at + 1] !== undefined || marks.at('copula', at) !== undefined;
}

/** 'no nuts in it', 'no egg at all', 'no dairy, no gluten'; where it is written, alone as well. */
function isSaidOfIt(text: Text, { to }: Words): boolean {
  const { language, tokens, spoken } = text;
  const { ofDish: said, within, inIt } = language.freeFrom;
  if (phraseAt(said, tokens, to)) return true;
  if (within.has(folded(text, to))) {
    for (let at = to + 1; at <= to + 3; at += 1) {
      if (inIt.has(folded(text, at)) || isTitleHead(text, at)) return true;
      if (isKindOfDish(text, at)) return true;
    }
    return false;
  }
  const next = tokens[to];
  const listed = phraseAt(language.freeFrom.before, tokens, next?.text === ',' ? to + 1 : to);
  return listed !== null || (!spoken && next?.kind !== 'word');
}
