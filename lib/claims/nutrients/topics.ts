import { compared } from './comparisons';
import { differenceBy } from './differences';
import { isAgain, isRow, mayFollow, nextInRow, rowFrom } from './bare-numbers';
import { choose, countsNear, moneyOf } from './choose-topic';
import { lessBy, shareOf, timesOf, type Topic } from '../numbers/multiples';
import type { DishMention } from '../scopes/dishes';
import type { Noun, Quantity } from '../numbers/quantity';
import { atOrBehind } from '../words/at-or-behind';
import { ofIngredient } from './of-ingredient';
import { only, type Text } from '../words/text';
import {
  isHandled,
  isOfFood,
  isWaiting,
  near,
  nounTopic,
  partsSaid,
  tokensOf,
  topicOf,
} from './topic';

/** Tokens in which a number without noun and unit may still count what was counted last. */
const REACH = 30;

/** Tokens from one nutrient to the next of a row, with an aside between. */
const ROW = 10;

/** Why numbers are no statements that still say what is talked about. */
const COUNTED: ReadonlySet<string> = new Set([
  'said before',
  'said by others',
  'taken back',
  'asked',
  'aim',
  'denied',
]);

/**
 * Gives numbers with neither unit nor noun what the text counted just before ('so half is 320 and 35'), and works out
 * parts and multiples of it ('half of that'), which come back as quantities of their own.
 */
export function followTopics(
  text: Text,
  quantities: readonly Quantity[],
  free: readonly Noun[],
  dishes: readonly DishMention[],
): Quantity[] {
  const times = text.marks.all('times');
  const named = tokensOf(dishes);
  const dishPlaces = {
    begins: new Set(dishes.map(({ from }) => from)),
    ends: new Set(dishes.map(({ to }) => to)),
  };
  let before: Quantity | undefined;
  const events = [
    ...quantities.map((quantity) => ({ at: quantity.begin, quantity })),
    ...free
      .filter(({ from }) => !named.has(from) && !isHandled(text, from))
      .map((noun) => ({ at: noun.from, noun })),
    ...times.map((mark) => ({ at: mark.from, mark })),
  ].sort((a, b) => a.at - b.at);
  const made: Quantity[] = [];
  let row: Topic[] = [];
  let place = 0;
  let lastBare: Quantity | null = null;
  let multiple: number | null = null;
  let waiting: Topic | undefined;
  let skipTo = 0;
  for (const event of events) {
    if (event.at < skipTo && 'mark' in event) continue;
    if ('noun' in event) {
      const { noun } = event;
      if (noun.claimed) {
        waiting = nounTopic(noun);
        continue;
      }
      const goesOn =
        row.length > 0 && row.every(({ low }) => low === null) && near(row, noun.from, 3);
      row = [...(goesOn ? row : []), nounTopic(noun)];
      waiting = row.at(-1);
      place = 0;
      continue;
    }
    if ('mark' in event) {
      const { mark } = event;
      skipTo = mark.to;
      const { factor, of } = mark.role;
      // 'for the same amount of food'
      if (factor === 1 && text.language.numbers.of.has(text.tokens[mark.to - 1]?.folded ?? ''))
        continue;
      if (factor === 1 && before?.said?.kind === 'amount' && before.said.food !== undefined)
        continue;
      if (of === 'less' || of === 'more') {
        const share = lessBy(text, mark.from, mark.to, factor, of);
        if (share) made.push(share);
        continue;
      }
      if (of === 'noun') {
        const share = shareOf(text, mark.from, mark.to, factor, before);
        if (share) made.push((before = share));
        else multiple = mark.from;
        continue;
      }
      // 'half of that is two hundred and five calories', where nothing was counted before
      const own = atOrBehind(quantities, mark.to);
      const counted = own?.said?.kind === 'nutrient' && own.begin - mark.to <= 3;
      if (counted && factor !== 1 && only(text, mark.to, own.begin, ['copula', 'hedge']))
        own.partOf = factor;
      if (near(row, mark.from, REACH)) {
        const made2 = row.flatMap((topic) =>
          timesOf(text, topic, mark.from, mark.to, factor, row.length > 1),
        );
        const next = atOrBehind(quantities, mark.to);
        const said =
          next &&
          next.begin - mark.to <= 3 &&
          only(text, mark.to, next.begin, ['so', 'copula', 'joiner', 'which', 'hedge']);
        if (said && factor !== 1) next.partOf = factor;
        // 'if you eat half of that, like I did, that's six twenty and sixty two'
        const later = factor === 1 ? [] : partsSaid(row, quantities, mark, factor);
        for (const quantity of later) quantity.partOf = factor;
        if (!said && later.length === 0 && !isOfFood(text, mark.to)) made.push(...made2);
      }
      continue;
    }
    const { quantity } = event;
    const last = before;
    before = quantity;
    const asked = quantity.killed === 'asked' || quantity.killed === 'aim';
    const own = quantity.said ? topicOf(quantity) : null;
    // What a food weighs follows no weight of the dish.
    if (quantity.said?.kind === 'amount' && !own && row[0]?.of === 'weight') row = [];
    const topic = own && asked ? { ...own, low: null, high: null } : own;
    if (topic && (quantity.killed === null || COUNTED.has(quantity.killed))) {
      const goesOn =
        lastBare === null &&
        near(row, quantity.begin, ROW) &&
        row[0]?.of === topic.of &&
        !row.some(({ nutrient }) => nutrient === topic.nutrient);
      row = goesOn ? [...row.filter(({ low }) => low !== null), topic] : [topic];
      place = 0;
      lastBare = null;
      continue;
    }
    if (quantity.killed !== null || quantity.said !== null) continue;
    if (waiting && isWaiting(text, waiting, quantity, row)) {
      row = [waiting];
      waiting = undefined;
    } else if (!near(row, quantity.begin, REACH)) continue;
    const inRow: boolean =
      lastBare !== null &&
      !isAgain(quantity, row) &&
      (row.length > 1
        ? isRow(text, lastBare.end, quantity.begin)
        : only(text, lastBare.end, quantity.begin, ['joiner', 'hedge', 'filler', 'scope']));
    if (!inRow) place = 0;
    const fills = !inRow && row.length > 1 && rowFrom(text, quantity, quantities) === row.length;
    if (!mayFollow(text, quantity, row, inRow, fills, dishPlaces)) continue;
    const chosen = choose(
      quantity,
      row,
      inRow ? place + 1 : 0,
      inRow || nextInRow(text, quantity, quantities),
      countsNear(quantities, quantity),
    );
    if (!chosen) continue;
    place = chosen.place;
    give(text, quantity, chosen.topic, last);
    if (multiple !== null && quantity.begin - multiple < 12) quantity.fraction = true;
    multiple = null;
    const { low, high, end } = quantity;
    row = row.map((other, index) => ({
      ...other,
      end,
      ...(index === chosen.place ? { low, high } : {}),
    }));
    lastBare = quantity;
  }
  return made;
}

function give(text: Text, quantity: Quantity, topic: Topic, before: Quantity | undefined): void {
  const own =
    topic.of === 'nutrient'
      ? (compared(text, quantity, before) ??
        differenceBy(text, quantity, before) ??
        ofIngredient(text, quantity, []))
      : null;
  quantity.said = { ...topic.said, ...own };
  const money = topic.of === 'price' ? moneyOf(quantity, topic) : undefined;
  if (money !== undefined) quantity.low = quantity.high = money;
}
