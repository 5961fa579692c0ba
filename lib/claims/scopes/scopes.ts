import { atOrBehind } from '../words/at-or-behind';
import { partsByCounts } from './by-counts';
import type { DishMention } from './dishes';
import { endWithNoun, type Quantity } from '../numbers/quantity';
import { GAP, isBehind, isTable, sameRow } from './rows';
import { mentionsOf, type Mention } from './scope-mentions';
import { followedByCopula } from '../words/followed-by-copula';
import { settle } from './settle-scope';
import type { ReadingStep, Scope } from '../statement';
import { only, type Text } from '../words/text';

/** Parts of a finished dish that are weighed. */
const WEIGHED: readonly Scope[] = ['whole', 'portion', 'each', 'half', 'slice'];
/** Tokens without any number in which a part that was said holds on. */
const HELD = 40;

const TIMES: ReadonlySet<string> = new Set(['minutes', 'readyIn']);
const DAYS: ReadonlySet<Scope> = new Set(['day', 'soFar']);

/** Says of each number of what it is: of the dish, or of a part of it that stands beside it, in its row or before. */
export function giveScopes(
  text: Text,
  quantities: readonly Quantity[],
  dishes: readonly DishMention[],
): void {
  const scoped = quantities.filter(({ killed, said }) => killed === null && said !== null);
  const mentions = mentionsOf(text, quantities, dishes);
  const fixed = new Map<Quantity, Mention>();
  const events = [
    ...scoped.map((quantity) => ({ at: quantity.begin, quantity })),
    ...mentions.map((mention) => ({ at: mention.mark.from, mention })),
    ...dishes.map((dish) => ({ at: dish.from, dish })),
    ...blankLines(text),
  ].sort((a, b) => a.at - b.at);
  let held = null as Mention | null;
  let row: Quantity[] = [];
  let last = 0;
  let title: string | null = null;
  let before: Mention | null = null;
  let table: number | null = null;
  for (const event of events) {
    if ('blank' in event) {
      if (held?.scope !== 'portion') held = null;
    } else if ('dish' in event) {
      // What follows another dish's name says nothing of the numbers before it.
      if (event.dish.title !== title) row = [];
      ({ title } = event.dish);
      held = endsPart(text, held, event.dish) ? null : held;
    } else if ('mention' in event) {
      const { mention } = event;
      if (mention.scope === 'dish' && mention.mark.role.link === 'ahead') {
        const of = text.marks.lastIn('ofThem', mention.mark.from - 1, mention.mark.to);
        if (held?.scope === 'compared' && !of) held = null;
        continue;
      }
      if (before && isPredicate(text, before, mention)) continue;
      // 'total for the day, all four meals', 'today I had 2050 calories all in'
      if (mention.scope === 'whole' && held && DAYS.has(held.scope)) continue;
      // 'up to now today I've had', 'so far it's fifty two grams today'
      if (before && mention.scope === 'day' && isOfThatDay(text, before, mention, held)) continue;
      // 'one serving of the stuffed peppers'
      if (before && isOf(text, before, mention)) continue;
      if (isTable(text, before, mention, row)) {
        const { from, to } = mention.mark;
        table = text.sentences.of[text.tokens[to]?.kind === 'line' ? to + 1 : from] ?? null;
      }
      before = mention;
      last = mention.mark.to;
      const latest = row.at(-1);
      // '18 min total'
      if (latest && isOfTime(text, latest, mention)) continue;
      // 'half of that is seven hundred and four on my plate'
      const there = latest?.partOf === 1 / 2 && mention.mark.from === latest.end;
      if (there && mention.mark.role.link === 'behind') continue;
      const ahead =
        isSetAgainst(text, mention) ||
        (latest && fixed.has(latest) && isRunOn(mention, latest, quantities));
      if (!ahead && isBehind(text, mention.mark, latest, quantities)) {
        const back = [...row].reverse();
        const taken = new Set<string | undefined>();
        let paid = false;
        for (const quantity of back) {
          // 'eight dollars, so two a head': two prices are of two parts.
          const price = quantity.said?.kind === 'price';
          if (price && paid) break;
          paid ||= price;
          // 'the loaf is 1600 calories, a hundred each'
          if (mention.mark.role.link === 'counted' && taken.has(quantity.said?.nutrient)) break;
          if (quantity.said?.kind === 'nutrient') taken.add(quantity.said.nutrient);
          // 'One pan, 52 g protein, under £2 a head'
          if (mention.scope !== 'day' && isPriceOfTitle(text, back[0], quantity)) break;
          if (areInBrackets(text, quantity.end, back[0], mention)) break;
          if (!takes(text, mention, quantity, fixed.get(quantity), quantity === back[0])) break;
          fixed.set(quantity, mention);
        }
        row = [];
      }
      held = mention.scope === 'dish' || isSetAgainst(text, mention) ? null : mention;
    } else {
      const { quantity } = event;
      if (quantity.sentence === table) quantity.killed ??= 'of two parts';
      // What was said long ago is said no more.
      if (quantity.begin - last > HELD) held = null;
      last = quantity.end;
      const next = row.at(-1);
      if (next && !sameRow(text, next, quantity)) row = [];
      row.push(quantity);
      if (held && appliesTo(held, quantity)) fixed.set(quantity, held);
    }
  }
  // A title that says a day is of that day: 'I ate 1,700 calories of soup in a day: 98 g of protein'.
  const day = text.context.form === 'title' && mentions.find(({ scope }) => scope === 'day');
  for (const quantity of day ? scoped : [])
    if (day && !fixed.has(quantity)) fixed.set(quantity, day);
  const counted = partsByCounts(text, quantities, fixed);
  for (const quantity of scoped) {
    const part = counted.get(quantity);
    if (part) delete quantity.partOf;
    const mention = part ?? fixed.get(quantity);
    settle(text, quantity, mention);
    if (mention && quantity.said?.scope === mention.scope) quantity.how.push(stepOf(text, mention));
  }
}

/** 'a portion is a sixth of the tray': how much the part is, and no other part. */
function isPredicate({ marks, tokens }: Text, before: Mention, { mark, scope }: Mention): boolean {
  const copula = marks.at('copula', before.mark.to);
  const comma = tokens[before.mark.to]?.text === ',' ? before.mark.to + 1 : -1;
  if (before.scope === 'dish' || before.scope === 'compared' || scope === 'compared') return false;
  // 'for one bowl, so a fifth of the pot, it is'
  const bracket = tokens[before.mark.to]?.text === '(' ? before.mark.to + 1 : -1;
  const aside = mark.from === bracket || mark.from === (marks.at('so', comma)?.to ?? comma);
  if (scope === 'unknown' && before.scope !== 'unknown' && aside) return true;
  return copula?.to === mark.from && marks.at('copula', mark.to) === undefined;
}

/** Whether another dish ends the part that was said; not 'per bowl, the salmon one is 590 and the tofu one 470'. */
function endsPart({ sentences }: Text, held: Mention | null, dish: DishMention): boolean {
  if (held === null || held.scope === 'compared') return true;
  if (dish.title === null) return false;
  const first = sentences.starts[sentences.of[held.mark.from] ?? 0] === held.mark.from;
  const same = sentences.of[held.mark.from] === sentences.of[dish.from];
  return !(dish.stems && first && same);
}

/** 'eighteen minutes total', and not 'bake it twenty minutes the whole loaf is'. */
function isOfTime(text: Text, { said, end }: Quantity, { mark, scope }: Mention): boolean {
  const right = TIMES.has(said?.kind ?? '') && mark.from === end && scope === 'whole';
  return right && !followedByCopula(text, mark.to);
}

/** Whether a word for the day says nothing new: right behind another one, or of what was eaten up to now. */
function isOfThatDay(text: Text, before: Mention, mention: Mention, held: Mention | null): boolean {
  if (DAYS.has(before.scope) && isNext(text, before, mention)) return true;
  const oneWord = mention.mark.to - mention.mark.from === 1;
  return held?.scope === 'soFar' && oneWord;
}

const isNext = (text: Text, { mark: { to } }: Mention, { mark: { from } }: Mention) =>
  from >= to && only(text, to, from, ['joiner', 'filler']);

/** In a title a part behind a price is of the price alone. */
const isPriceOfTitle = ({ context }: Text, last: Quantity | undefined, { said }: Quantity) =>
  context.form === 'title' && last?.said?.kind === 'price' && said?.kind !== 'price';

/** 'one serving of the stuffed peppers': what the part is of, and no other part. */
function isOf({ tokens, language }: Text, before: Mention, { mark, scope }: Mention): boolean {
  const of = language.numbers.of.has(tokens[before.mark.to]?.folded ?? '');
  return (
    of &&
    scope !== 'compared' &&
    (scope !== 'whole' || mark.role.link === 'subject') &&
    mark.from - before.mark.to <= 2 &&
    mark.from > before.mark.to
  );
}

/** 'one pepper that's 185 calories two of them 370': so many of them right between two numbers are of the second. */
function isRunOn(
  { scope, mark }: Mention,
  { end, noun }: Quantity,
  all: readonly Quantity[],
): boolean {
  const right = endWithNoun({ end, noun }) === mark.from;
  return scope === 'unknown' && right && atOrBehind(all, mark.to)?.begin === mark.to;
}

/** 'lower than the classic: 14 g': what follows is no longer of that. */
function isSetAgainst({ marks }: Text, { mark, scope }: Mention): boolean {
  const than = marks.before('thanWord', mark.from);
  return scope === 'compared' && than !== undefined && marks.at('which', mark.to) === undefined;
}

function blankLines({ tokens }: Text): { readonly at: number; readonly blank: true }[] {
  const found: { readonly at: number; readonly blank: true }[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    if (tokens[at]?.kind === 'line' && tokens[at + 1]?.kind === 'line')
      found.push({ at, blank: true });
  }
  return found;
}

function stepOf({ tokens }: Text, { mark, scope }: Mention): ReadingStep {
  const start = tokens[mark.from]?.start ?? 0;
  return { stage: 'scope', start, end: tokens[mark.to - 1]?.end ?? start, as: scope };
}

/** '$2 wraps (33 g protein, 390 calories each)': a part in brackets with a number holds for nothing before them. */
function areInBrackets(
  { tokens }: Text,
  from: number,
  last: Quantity | undefined,
  { mark }: Mention,
): boolean {
  const open: number[] = [];
  for (let at = from; at < mark.from; at += 1) {
    if (tokens[at]?.text === '(') open.push(at);
    else if (tokens[at]?.text === ')') open.pop();
  }
  const [first] = open;
  return first !== undefined && last !== undefined && first < last.begin;
}

/** Whether a part behind a row holds for one of its numbers; the last one stands right before it. */
function takes(
  text: Text,
  { scope, mark }: Mention,
  quantity: Quantity,
  known: Mention | undefined,
  last: boolean,
): boolean {
  // 'the takeaway is 980 and ours is 495'
  if (scope === 'dish' && known !== undefined) return false;
  // 'three dishes, less than 2,100 calories and 176 grams of protein for the whole day'
  if (scope === 'day' && known?.scope === 'unknown' && !last) return true;
  if (scope === 'day' && known) {
    const right = mark.from === endWithNoun(quantity);
    // 'one plate is 260 calories … no pickle today'; 'call it 232 grams for the day' is of all of it
    if (!right || !last) return false;
  }
  // 'the coffee shop one is 420 a slice' stays that of another thing.
  const itsOwn = known?.scope === 'compared' && followedByCopula(text, known.mark.to);
  if (known?.scope === 'compared' && (scope === 'per100g' || itsOwn)) return false;
  if (
    scope === 'whole' &&
    mark.role.link === 'behind' &&
    (known?.scope === 'day' || known?.scope === 'soFar')
  )
    return false;
  // '38 percent of the calories come from protein, and it is low fat, four grams in a slice'
  if (quantity.said?.unit === '%' && quantity.said.against === undefined) {
    if (!last || mark.from - quantity.end > GAP) return false;
  }
  if (last)
    return (
      quantity.said?.kind !== 'amount' ||
      quantity.said.food === undefined ||
      (mark.from === quantity.end && isOfFoodToo(text, mark, scope)) ||
      (scope === 'portion' && goesInto(text, quantity, mark))
    );
  if (quantity.said?.kind === 'amount') return false;
  return known === undefined || (mark.role.link === 'counted' && isFurther(known, quantity));
}

/** 'six ounces of chicken goes in every portion'. */
function goesInto({ marks }: Text, { end }: Quantity, mark: Mention['mark']): boolean {
  const verb = marks.at('use', end) ?? marks.at('into', end);
  const every = mark.role.link === 'free';
  return every && verb !== undefined && verb.to >= mark.from && mark.from > end;
}

/** 'thirty grams of cheese a portion', 'forty grams of butter for the whole pan'; no 'two eggs in the bowl'. */
function isOfFoodToo({ tokens, language, marks }: Text, mark: Mention['mark'], scope: Scope) {
  const led = marks.at('serveTitle', mark.from - 1) ?? marks.at('serveTitle', mark.from);
  if (scope === 'whole') return led !== undefined;
  const pointed = language.numbers.pointers.has(tokens[mark.from + 1]?.folded ?? '');
  return !(mark.role.link === 'behind' && pointed);
}

/** Whether a part was said further back than right before a number: 'two of them is 344, so 172 and 18 each'. */
const isFurther = ({ mark, scope }: Mention, { begin }: Quantity) =>
  scope === 'unknown' && begin - mark.to > GAP;

/** Whether a part that was said before holds for a number: for foods, only where it stands right before. */
function appliesTo(held: Mention, { said, begin }: Quantity): boolean {
  // What shares have of the energy is the same in each part.
  if (said?.unit === '%' && said.against === undefined && begin - held.mark.to > HELD / 2)
    return false;
  if (said?.kind === 'amount' && said.food !== undefined) {
    return false;
  }
  if (said?.kind === 'amount') return WEIGHED.includes(held.scope);
  if (said?.kind === 'price' && (held.scope === 'per100g' || held.scope === 'compared')) {
    return begin - held.mark.to < GAP;
  }
  return true;
}
