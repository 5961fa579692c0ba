import { sentenceEnd, sentenceStart } from '../words/context';
import { isApposition } from '../kinds/apposition';
import type { DishMention } from './dishes';
import type { Mark } from '../words/marks';
import { otherDishes } from './other-dishes';
import { isName, isOfOne, isThisDish } from './part-names';
import { phraseAt } from '../words/phrases';
import type { Quantity } from '../numbers/quantity';
import type { Against, Scope } from '../statement';
import { unnamedParts } from './unnamed-parts';
import { only, type Text } from '../words/text';
import { allPieces, wholeWords } from './whole-words';
import { holdsFood } from '../words/holds-food';
import { followedByCopula } from '../words/followed-by-copula';

/** A part that is said. */
export interface Mention {
  readonly mark: Mark<'scope'>;
  readonly scope: Scope;
  readonly against?: Against;
}

/** What the title counts, where it counts portions: each of 'Overnight wheat biscuit pots'. */
function titled({ title, language }: Text): 'portion' | undefined {
  const last = title.tokens.at(-1);
  if (!last || language.singular(last.folded) === last.folded) return undefined;
  const roles = phraseAt(language.lexicon, [last], 0)?.value ?? [];
  const part = roles.find((role) => role.cat === 'thing');
  return part?.cat === 'thing' && (part.as === 'portion' || part.as === 'whole')
    ? 'portion'
    : undefined;
}

/** Tokens from 'each' to the persons that are meant: 'each for four of us'. */
const FED = 4;

/** Words that say which part is meant, up to its verb. */
const DESCRIBED = 7;

/** 'a bowl like that is', 'the plate in front of you is': words that say which, and then the verb. */
export function isDescribed(
  { marks, tokens, language: { numbers, singular } }: Text,
  { role, from: begin, to: from }: Mark<'scope'>,
): boolean {
  const one = role.link === 'behind' && numbers.article.has(tokens[begin]?.folded ?? '');
  if ((role.link !== 'subject' && !one) || from - begin < 2) return false;
  if (marks.before('asWord', begin) || marks.before('serveTitle', begin)) return false;
  // 'the pancakes from this morning' are more than one.
  const last = tokens[from - 1];
  if (last && /s$/.test(last.text) && singular(last.folded) !== last.folded) return false;
  const along = marks.at('use', from);
  const starts =
    marks.at('small', from) ?? marks.at('asWord', from) ?? marks.at('which', from) ?? along;
  if (!starts || (marks.at('joiner', from) && !along)) return false;
  for (let at = from; at <= from + DESCRIBED; at += 1) {
    const token = tokens[at];
    if (at > from && marks.at('copula', at)) return true;
    if (token?.kind !== 'word' || numbers.cardinals.has(token.folded)) return false;
    // 'a plate of that with the dumplings on is'
    const joined = marks.at('joiner', at) && !marks.at('use', at);
    if (joined || (marks.at('noun', at) ?? marks.at('so', at))) return false;
    // 'a slice of the meatloaf comes out at'
    const dish = numbers.of.has(tokens[from]?.folded ?? '') && at === from + 1;
    const part = marks.at('scope', at);
    if (at > from && part && !(dish && part.role.link === 'subject')) return false;
  }
  return false;
}

/** Tokens from the name of a dish to 'each', which then is a piece of that dish. */
const NAMED = 14;

/** The parts that are said, without those that only may be: 'the tray' without a verb, 'a bowl' away from a number. */
export function mentionsOf(
  text: Text,
  quantities: readonly Quantity[],
  dishes: readonly DishMention[],
): Mention[] {
  const found: Mention[] = [];
  const ends = new Set<number>();
  // 'a euro and a half a bowl' is of a bowl, and not of half a bowl.
  const within = new Set<number>();
  const begins = new Set(quantities.map(({ begin }) => begin));
  for (const { end, noun, unit, from, unitEnd, said } of quantities) {
    ends.add(end);
    // 'forty percent of your fibre for the day' is no number of the day.
    const to = said?.unit === '%DV' ? end : unitEnd;
    for (let at = from + 1; unit !== null && at < to; at += 1) within.add(at);
    if (noun) ends.add(noun.to);
  }
  const things = quantities.filter(
    ({ said, killed }) => said?.kind === 'portions' && killed === null,
  );
  const made = new Set(things.map(({ begin }) => begin));
  const name = (to: number) => text.language.singular(text.tokens[to - 1]?.folded ?? '');
  // 'six pots', 'Pots: 6'
  const vessels = new Set(things.flatMap(({ begin, end }) => [name(end), name(begin - 1)]));
  let free = 0;
  let counting = 0;
  let naming = 0;
  const others = [
    ...unnamedParts(text, quantities),
    ...otherDishes(text, dishes),
    ...wholeWords(text),
    ...allPieces(text),
  ];
  const all = [...others, ...text.marks.all('scope')];
  const names = new Map(dishes.map(({ from, to }) => [to, from]));
  const total = lastMeal(text, quantities);
  for (const mark of all.sort((a, b) => a.from - b.from || b.to - a.to)) {
    const ahead = mark.role.scope === 'whole' && begins.has(mark.to) && isTotal(text, mark);
    if (mark.role.link === 'subject' && isInName(names, mark)) continue;
    // 'all of these are rough'
    if (within.has(mark.from) || mark.from < free || text.marks.at('allAbout', mark.from)) continue;
    if (mark.role.scope === 'unknown' && made.has(mark.from)) continue;
    if (!(ahead || isSaid(text, mark, ends, begins))) {
      // 'the expensive bit of the day' says no day either.
      if (mark.role.scope === 'day' && mark.role.link === 'behind') free = mark.to;
      continue;
    }
    // 'in total for the day' is of the day.
    const day = text.marks.at('scope', mark.to)?.role.scope;
    if (mark.role.scope === 'whole' && (day === 'day' || day === 'soFar')) continue;
    if (isDenied(text, mark)) {
      free = mark.to;
      continue;
    }
    if (isApposition(text, mark, ends)) {
      free = mark.to;
      continue;
    }
    free = mark.to;
    const { role } = mark;
    // 'breakfast 430, lunch 560, total 990'
    if (role.scope === 'whole' && mark.from > total && mark.from - total <= SUMMED) {
      found.push({ mark, scope: 'day' });
      continue;
    }
    // 'six pots out of this, 310 calories a pot'
    if (role.scope === 'whole' && vessels.has(name(mark.to)) && isOfOne(text, mark)) {
      found.push({ mark, scope: 'portion' });
      continue;
    }
    if (role.link !== 'counted') {
      found.push({ mark, scope: role.scope, ...(role.against ? { against: role.against } : {}) });
      continue;
    }
    while ((things[counting]?.begin ?? Infinity) < mark.from) counting += 1;
    const unit = things[counting - 1]?.said?.unit;
    const thing = text.marks.lastIn('thing', mark.from - 14, mark.from)?.role.as;
    while ((dishes[naming]?.to ?? Infinity) <= mark.from) naming += 1;
    const dish = dishes[naming - 1];
    const named = dish && dish.from > mark.from - NAMED ? dish : undefined;
    const counts = text.marks.lastIn('thing', named?.to ?? 0, mark.from);
    const fed = text.marks.firstIn('thing', mark.to, mark.to + FED)?.role.as;
    const shared = text.marks.lastIn('serve', mark.from - 14, mark.from)?.role.as === 'portion';
    const person = shared || thing === 'person' || fed === 'person' ? 'portion' : undefined;
    const said = unit === 'portion' && text.language.titleParts(text.title) ? 'piece' : unit;
    const vessel = named && text.marks.at('thing', named.to - 1)?.role.as === 'portion';
    const own = named && (vessel ? 'portion' : 'piece');
    const as = own && !counts ? own : (said ?? person ?? thing ?? titled(text));
    const scope = as === 'portion' || as === 'slice' ? as : 'each';
    found.push({ mark, scope });
  }
  return found;
}

/** 'the taco bowl that is': the last word of a dish's name, and no part of it. */
const isInName = (names: ReadonlyMap<number, number>, { from, to }: Mark<'scope'>): boolean =>
  (names.get(to) ?? Infinity) < from;

/** Meals that make a day, and tokens from the last of them to what they come to. */
const MEALS = 2;
const SUMMED = 20;
/** Tokens from a meal to its number. */
const OF_MEAL = 8;

/** Where the last of several meals that numbers are said of one after the other is named; infinite where none are. */
function lastMeal({ marks }: Text, quantities: readonly Quantity[]): number {
  const meals = new Map<string, number>();
  for (const { begin, said, killed } of quantities) {
    if (said?.kind !== 'nutrient' || killed !== null) continue;
    const meal = marks.lastIn('meal', begin - OF_MEAL, begin);
    if (meal) meals.set(meal.role.meal, meal.from);
  }
  return meals.size < MEALS ? Infinity : Math.max(...meals.values());
}

/** 'grand total seven pounds': right before a number, and not right behind another. */
const isTotal = ({ marks, tokens }: Text, { from, role }: Mark<'scope'>) =>
  role.link !== 'free' &&
  marks.before('noun', from) === undefined &&
  tokens[from - 1]?.kind !== 'number';

/** '(not per person)'; and 'Fat, total 9.8 g', where the word belongs to the noun. */
function isDenied({ marks, tokens }: Text, { from, to, role }: Mark<'scope'>): boolean {
  const noun = tokens[from - 1]?.text === ',' && marks.before('noun', from - 1) !== undefined;
  const total = role.scope === 'whole' && to - from === 1 && noun && tokens[to]?.kind === 'number';
  // 'half of what you need in a day'
  const need =
    role.scope === 'day' &&
    marks.before('target', from) !== undefined &&
    marks.before('eat', from) === undefined;
  return total || need || (role.link === 'free' && marks.before('not', from) !== undefined);
}

/** Tokens from a part that stands first to its number. */
const FRONTED = 8;
/** Tokens before it in which no number stands. */
const FIRST = 20;

/**
 * 'for a bowl without rice 290 calories', and 'TINNED 560 kcal' on a line of its own: a part that is said before any
 * number of its sentence is one of what follows.
 */
function isFronted(text: Text, { from, to, role }: Mark<'scope'>, begins: ReadonlySet<number>) {
  const { tokens, spoken } = text;
  const dash = /^[–—-]$/.test(tokens[to]?.text ?? '') ? to + 1 : to;
  if (!spoken && begins.has(dash) && (tokens[from - 1]?.kind ?? 'line') === 'line') return true;
  if (role.link !== 'behind') return false;
  // 'the macros on a plate three ninety calories'
  if (!text.marks.at('serveTitle', from))
    return begins.has(to) && isFirst(text, from, begins) && isLed(text, from);
  if (!isFirst(text, from, begins)) return false;
  const end = Math.min(sentenceEnd(text, from), to + FRONTED);
  for (let at = to; at < end; at += 1) if (begins.has(at)) return true;
  return false;
}

/** Whether no number stands before a token in its sentence. */
function isFirst(text: Text, from: number, begins: ReadonlySet<number>): boolean {
  const start = Math.max(sentenceStart(text, from), from - FIRST);
  for (let at = start; at < from; at += 1) if (begins.has(at)) return false;
  return true;
}

/** Whether it begins with a word for where something is: 'on a plate', 'in a bowl', and not 'that bowl'. */
const isLed = ({ marks, tokens, language }: Text, from: number) =>
  marks.at('asWord', from) !== undefined &&
  !language.numbers.pointers.has(tokens[from]?.folded ?? '');

function isSaid(
  text: Text,
  mark: Mark<'scope'>,
  ends: ReadonlySet<number>,
  begins: ReadonlySet<number>,
): boolean {
  const { role, from, to } = mark;
  if (holdsFood(text, mark) || isName(text, mark) || isThisDish(text, mark)) return false;
  // 'six out of this dish' says how many.
  const out = text.marks.lastIn('outOf', from - 3, to + 1);
  if (out && out.from < from && out.to >= to) return false;
  // 'I eat half of that' says how much of what was said, and no part of what stands around it.
  for (let at = from + 1; at < to; at += 1)
    if ((text.marks.at('times', at)?.to ?? 0) > to) return false;
  // 'per hundred calories'
  if (role.scope === 'per100g' && text.marks.at('noun', to)) return false;
  if (role.link === 'free' || role.link === 'counted' || role.link === 'ahead') return true;
  if (followedByCopula(text, to) || isDescribed(text, mark)) return true;
  if (isFronted(text, mark, begins)) return true;
  if (role.scope === 'whole' && text.marks.at('noun', to)) return false;
  // 'seven pounds the pot'
  if (role.link === 'subject') return role.scope === 'whole' && ends.has(from);
  // 'nine grams. for a full plate.'
  const stop = text.tokens[from - 1]?.text === '.' && ends.has(from - 1);
  if (stop && (text.tokens[to]?.text ?? '.') === '.') return true;
  for (let back = 0; back <= 3; back += 1) {
    const at = from - back;
    // '346 calories, that's a bowl'
    const links = ['filler', 'small', 'joiner', 'which', 'ofThem'] as const;
    if (ends.has(at) && only(text, at, from, links)) return true;
    if (text.marks.before('noun', at) && back <= 1) return true;
  }
  return false;
}
