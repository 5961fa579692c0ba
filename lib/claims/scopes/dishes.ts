import { endWithNoun, type Quantity } from '../numbers/quantity';
import { isSaidOfIt } from '../words/said-of-it';
import { saysNumber } from '../words/says-number';
import { only, type Text } from '../words/text';
import { titleNames, type TitleNames } from '../words/title-names';
import { kindMentions } from './dish-kinds';

/** A dish that is named: its title, or null for the one that is talked about. */
export interface DishMention {
  readonly from: number;
  readonly to: number;
  readonly title: string | null;
  /** The words of the whole title, where it is named by what tells it from the others: 'the salmon one'. */
  readonly stems?: readonly string[];
}

/**
 * Where dishes are named: by the last word of the title with others of it before, by that word alone where no other
 * dish has it and it is no word for a part, or by what tells it from the others.
 */
export function dishMentions(text: Text, quantities: readonly Quantity[]): DishMention[] {
  const { context, language, tokens, marks } = text;
  const titles = (context.dishes ?? []).map((title) => titleNames(title, language));
  if (titles.length < 2) return [];
  const byHead = new Map<string, TitleNames[]>();
  for (const title of titles)
    if (title.head !== '') byHead.set(title.head, [...(byHead.get(title.head) ?? []), title]);
  const found: DishMention[] = [];
  tokens.forEach((token, at) => {
    const meal = mealOf(text, titles, at);
    if (meal) found.push({ from: at, to: at + 1, title: meal === context.dish ? null : meal });
    const candidates = byHead.get(language.singular(token.folded));
    if (!candidates || meal) return;
    const best = candidates
      .map((title) => ({ title, words: wordsBefore(text, at, title) }))
      .sort((a, b) => b.words - a.words);
    const [first, second] = best;
    if (!first || (second && second.words === first.words)) return;
    const part = marks.at('thing', at) ?? marks.at('unit', at);
    if (first.words === 0 && part && !isNamedAlone(text, at)) return;
    if (isCountOfThem(text, at - first.words, at)) return;
    const title = first.title.title === context.dish ? null : first.title.title;
    found.push({ from: at - first.words, to: at + 1, title });
  });
  const byKind = kindMentions(text, titles, quantities, found);
  return byKind.length === 0 ? found : [...found, ...byKind].sort((a, b) => a.from - b.from);
}

/** 'dinner comes to', where the title of one dish alone has that meal: 'Dinner: bean bake'. */
function mealOf({ marks, tokens, language }: Text, titles: readonly TitleNames[], at: number) {
  const word = language.singular(tokens[at]?.folded ?? '');
  if (marks.at('thing', at)?.role.as !== 'meal' || !marks.at('copula', at + 1)) return null;
  const [only, ...others] = titles.filter(({ stems }) => stems.includes(word));
  return only && others.length === 0 ? only.title : null;
}

/** 'three protein brownies': so many dishes of one kind, and none of them by its name. */
function isCountOfThem({ tokens, language }: Text, from: number, at: number): boolean {
  const [count, last] = [tokens[from - 1], tokens[at]?.folded ?? ''];
  const many = count?.kind === 'number' ? count.text : (count?.folded ?? '');
  const number =
    language.numbers.cardinals.get(many) ?? Number(count?.kind === 'number' ? many : 0);
  return number > 1 && language.singular(last) !== last;
}

/** 'then the wrap, five sixty', where no dish is talked about more than another: a dish by a word that is one for a part. */
function isNamedAlone({ context, tokens, language }: Text, at: number): boolean {
  if (context.dish !== undefined) return false;
  const before = tokens[at - 1];
  return before?.kind !== 'word'
    ? before?.kind !== 'number'
    : language.numbers.pointers.has(before.folded);
}

function wordsBefore({ tokens, language }: Text, at: number, { stems }: TitleNames): number {
  let words = 0;
  while (stems.includes(language.singular(tokens[at - words - 1]?.folded ?? ''))) words += 1;
  return Math.min(words, stems.length - 1);
}

/** Tokens in which a dish that was named holds on. */
const HELD = 60;

/** The dish that each token's numbers are of: the one named last in the sentence, or in speech before it. */
function dishAt(text: Text, mentions: readonly DishMention[], at: number): DishMention | null {
  const last = mentions[firstAt(mentions, at + 1) - 1];
  if (!last) return null;
  if (at - last.from >= HELD) return null;
  // 'the meatloaf was 700, this one is 660'
  for (let token = last.to; token < at; token += 1)
    if (text.marks.at('scope', token)?.role.scope === 'dish') return null;
  const { sentences, spoken } = text;
  if (!spoken && isHeading(text, last) && isBlockBelow(text, last.to, at)) return last;
  const goesOn = text.marks.at('copula', last.to) !== undefined && isSaidOfIt(text, at);
  // 'The orzo is 480 calories a bowl. It has 31 g of protein.'
  const held = spoken || (goesOn && (sentences.of[last.from] ?? 0) + 1 === sentences.of[at]);
  if (!held && sentences.of[last.from] !== sentences.of[at]) return null;
  return last;
}

/** Tokens of a heading: a dish's name with what stands in brackets behind it. */
const HEADING = 8;

/** Whether a dish's name stands on a line without any number of its own. */
function isHeading({ tokens, language }: Text, { from, to }: DishMention): boolean {
  if ((tokens[from - 1]?.kind ?? 'line') !== 'line') return false;
  for (let at = to; at <= to + HEADING; at += 1) {
    const token = tokens[at];
    if (token === undefined || token.kind === 'line') return token !== undefined;
    if (saysNumber(token, language)) return false;
  }
  return false;
}

/** Whether no blank line stands between a heading and a number below it. */
function isBlockBelow({ tokens }: Text, from: number, to: number): boolean {
  for (let at = from; at + 1 < to; at += 1)
    if (tokens[at]?.kind === 'line' && tokens[at + 1]?.kind === 'line') return false;
  return true;
}

/** Tokens from a number to the dish that it is said of behind it. */
const BEHIND = 7;

/** The dish that a number is of: 'thirty two grams of protein in a slice of the meatloaf', or the one named before. */
export function dishOf(
  text: Text,
  mentions: readonly DishMention[],
  { begin, end, noun }: Quantity,
): DishMention | null {
  const { marks, tokens } = text;
  const to = endWithNoun({ end, noun });
  const next = mentions[firstAt(mentions, to)];
  const before = mentions[firstAt(mentions, begin + 1) - 1];
  const links = ['small', 'filler', 'scope', 'asWord'] as const;
  const behind =
    next !== undefined &&
    before?.to !== begin &&
    next.from > to &&
    next.from - to <= BEHIND &&
    marks.at('copula', next.to) === undefined &&
    tokens[next.to]?.kind !== 'number' &&
    marks.firstIn('so', to, next.from) === undefined &&
    only(text, to, next.from, links);
  if (behind) return next;
  const last = dishAt(text, mentions, begin);
  return last ?? (next && isToldBehind(text, to, next) ? next : null);
}

/** Tokens from a number of a row to the dish that is told behind the row. */
const TOLD = 16;

/** 'calories six ninety, protein fifty eight, that's the skillet': right behind the row that it is of. */
function isToldBehind({ marks, tokens, spoken }: Text, end: number, { from, to }: DishMention) {
  const the = marks.before('filler', from)?.from ?? from;
  const that = marks.before('which', the);
  if (!spoken || !that || that.from < end || from - end > TOLD) return false;
  for (let at = end; at < that.from; at += 1)
    if (marks.at('so', at) ?? marks.at('scope', at)) return false;
  return marks.at('copula', to) === undefined && tokens[to]?.kind !== 'number';
}

/** The place of the first mention that begins at a token or behind it. */
function firstAt(mentions: readonly DishMention[], token: number): number {
  let low = 0;
  let high = mentions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((mentions[middle]?.from ?? 0) < token) low = middle + 1;
    else high = middle;
  }
  return low;
}
