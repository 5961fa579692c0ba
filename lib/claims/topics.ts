import { lessBy, shareOf, timesOf, type Topic } from './multiples';
import type { DishMention } from './dishes';
import type { Noun, Quantity } from './quantity';
import { atOrBehind } from './at-or-behind';
import { ofIngredient } from './of-ingredient';
import { only, type Text } from './text';

/** Tokens in which a number without noun and unit may still count what was counted last. */
const REACH = 30;
/** How far a bare number may be from the last one of the same topic, as a factor. */
const FAR = 30;
/** Two numbers of one topic right after each other are told apart by less than this share. */
const AGAIN = 0.05;
/** With several topics, by which factor the nearest must be nearer than the next. */
const CLEARLY = 3;

/** Why numbers are no statements that still say what is talked about. */
const COUNTED: ReadonlySet<string> = new Set([
  'said before',
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
  const dishEnds = new Set(dishes.map(({ to }) => to));
  let before: Quantity | undefined;
  const events = [
    ...quantities.map((quantity) => ({ at: quantity.begin, quantity })),
    ...free.filter(({ from }) => !named.has(from)).map((noun) => ({ at: noun.from, noun })),
    ...times.map((mark) => ({ at: mark.from, mark })),
  ].sort((a, b) => a.at - b.at);
  const made: Quantity[] = [];
  let row: Topic[] = [];
  let place = 0;
  let lastBare: Quantity | null = null;
  let multiple: number | null = null;
  let skipTo = 0;
  for (const event of events) {
    if (event.at < skipTo && 'mark' in event) continue;
    if ('noun' in event) {
      const { noun } = event;
      const goesOn =
        row.length > 0 && row.every(({ low }) => low === null) && near(row, noun.from, 3);
      row = [...(goesOn ? row : []), nounTopic(noun)];
      place = 0;
      continue;
    }
    if ('mark' in event) {
      const { mark } = event;
      skipTo = mark.to;
      const { factor, of } = mark.role;
      if (of === 'less' || of === 'more') {
        const share = lessBy(text, mark.from, mark.to, factor, of);
        if (share) made.push(share);
        continue;
      }
      if (of === 'noun') {
        const share = shareOf(text, mark.from, mark.to, factor, before);
        if (share) made.push(share);
        else multiple = mark.from;
        continue;
      }
      if (near(row, mark.from, REACH)) {
        const made2 = row.flatMap((topic) =>
          timesOf(text, topic, mark.from, mark.to, factor, row.length > 1),
        );
        const next = atOrBehind(quantities, mark.to);
        const said =
          next &&
          next.begin - mark.to <= 3 &&
          only(text, mark.to, next.begin, ['so', 'copula', 'joiner', 'which', 'hedge']);
        if (said && factor < 1) next.partOf = factor;
        if (!said && !isOfFood(text, mark.to)) made.push(...made2);
      }
      continue;
    }
    const { quantity } = event;
    before = quantity;
    const asked = quantity.killed === 'asked' || quantity.killed === 'aim';
    const own = quantity.said ? topicOf(quantity) : null;
    const topic = own && asked ? { ...own, low: null, high: null } : own;
    if (topic && (quantity.killed === null || COUNTED.has(quantity.killed))) {
      const goesOn =
        lastBare === null &&
        near(row, quantity.begin, 4) &&
        row[0]?.of === topic.of &&
        !row.some(({ nutrient }) => nutrient === topic.nutrient);
      row = goesOn ? [...row.filter(({ low }) => low !== null), topic] : [topic];
      place = 0;
      lastBare = null;
      continue;
    }
    if (quantity.killed !== null || quantity.said !== null) continue;
    if (!near(row, quantity.begin, REACH)) continue;
    const inRow: boolean =
      lastBare !== null &&
      only(text, lastBare.end, quantity.begin, ['joiner', 'hedge', 'filler', 'scope']);
    if (!inRow) place = 0;
    const fills = !inRow && row.length > 1 && rowFrom(text, quantity, quantities) === row.length;
    if (!mayFollow(text, quantity, row, inRow, fills, dishEnds)) continue;
    const chosen = choose(
      quantity,
      row,
      inRow ? place + 1 : 0,
      inRow || nextInRow(text, quantity, quantities),
    );
    if (!chosen) continue;
    place = chosen.place;
    give(text, quantity, chosen.topic);
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

/** Tokens of the names of dishes: the 'protein' of protein flapjacks counts nothing. */
function tokensOf(dishes: readonly DishMention[]): Set<number> {
  const found = new Set<number>();
  for (const { from, to } of dishes) for (let at = from; at < to; at += 1) found.add(at);
  return found;
}

/** 'a third of that is the yoghurt': what one food has of it. */
function isOfFood(text: Text, at: number): boolean {
  const copula = text.marks.at('copula', at);
  return copula !== undefined && (text.food(copula.to) ?? text.food(copula.to + 1)) !== null;
}

const near = (row: readonly Topic[], at: number, reach: number) => {
  const end = row.at(-1)?.end;
  return end !== undefined && at - end <= reach && at >= end;
};

const nounTopic = ({ nutrient, unit, to }: Noun): Topic => ({
  said: { kind: 'nutrient', nutrient, unit },
  nutrient,
  low: null,
  high: null,
  end: to,
  of: 'nutrient',
});

function topicOf({ said, low, high, end }: Quantity): Topic | null {
  if (!said) return null;
  if (said.kind === 'nutrient' && said.unit !== '%' && said.unit !== '%DV') {
    const { scope: _, against: __, food: ___, ...bare } = said;
    return { said: bare, nutrient: said.nutrient ?? null, low, high, end, of: 'nutrient' };
  }
  if (said.kind === 'price') {
    return {
      said: { kind: 'price', unit: said.unit },
      nutrient: null,
      low,
      high,
      end,
      of: 'price',
    };
  }
  if (said.kind === 'amount' && said.food === undefined) {
    return {
      said: { kind: 'amount', unit: said.unit },
      nutrient: null,
      low,
      high,
      end,
      of: 'weight',
    };
  }
  return null;
}

/** Whether the words around a bare number let it count what was counted before. */
function mayFollow(
  text: Text,
  quantity: Quantity,
  row: readonly Topic[],
  inRow: boolean,
  fillsRow: boolean,
  dishEnds: ReadonlySet<number>,
): boolean {
  const { marks } = text;
  const { begin, end, unit } = quantity;
  if (unit !== null && !(unit.of === 'mass' && row.some(({ said }) => said.unit === unit.unit)))
    return false;
  if (unit === null && !endsBare(text, end)) return false;
  if (unit !== null || inRow || fillsRow) return true;
  if (quantity.hedge === 'about' && marks.before('hedge', begin) === undefined) return true;
  if (marks.at('scope', end) !== undefined && marks.at('scope', end)?.role.link !== 'subject')
    return true;
  if (text.tokens[begin - 1]?.text === '?') return true;
  // The same number once more, or more exactly: 'almost fifty grams of protein forty nine point six'.
  const again = row.some(
    ({ low, end: last }) =>
      low !== null &&
      (low === quantity.low || (begin - last <= 2 && Math.abs(quantity.low / low - 1) < AGAIN)),
  );
  if (again && quantity.high > 9) return true;
  for (const category of ['copula', 'so', 'which', 'correct', 'scope', 'adds', 'alone'] as const) {
    if (marks.before(category, begin)) return true;
  }
  // 'and the stew at four thirty two'
  const lead = marks.before('lead', begin);
  if (lead && text.context.dishes !== undefined && dishEnds.has(lead.from)) return true;
  // 'calories for the day so far eleven fifty'
  const last = row.at(-1);
  return (
    last !== undefined &&
    last.low === null &&
    only(text, last.end, begin, ['scope', 'joiner', 'copula', 'filler', 'small'])
  );
}

/** Whether nothing that would be counted follows. */
function endsBare({ marks, tokens, food }: Text, end: number): boolean {
  const token = tokens[end];
  if (marks.at('trapBehind', end) || marks.at('thing', end))
    return marks.at('scope', end) !== undefined;
  if (token?.kind === 'number') return false;
  if (token?.kind !== 'word') return token?.text !== '%' && token?.text !== '°';
  if (food(end) && !marks.at('so', end)) return false;
  return (
    [
      'small',
      'so',
      'joiner',
      'copula',
      'scope',
      'which',
      'correct',
      'filler',
      'hedge',
      'alone',
      'not',
    ] as const
  ).some((category) => marks.at(category, end));
}

/** How many numbers without unit and noun stand in a row from this one on. */
function rowFrom(text: Text, quantity: Quantity, all: readonly Quantity[]): number {
  let last = quantity;
  for (let length = 1; length < 12; length += 1) {
    if (!nextInRow(text, last, all)) return length;
    last = atOrBehind(all, last.begin + 1) ?? last;
  }
  return 0;
}

function nextInRow(text: Text, quantity: Quantity, all: readonly Quantity[]): boolean {
  const next = atOrBehind(all, quantity.begin + 1);
  return (
    next !== undefined &&
    next.unit === null &&
    next.noun === null &&
    only(text, quantity.end, next.begin, ['joiner', 'hedge', 'filler', 'scope'])
  );
}

function choose(
  quantity: Quantity,
  row: readonly Topic[],
  place: number,
  ordered: boolean,
): { readonly topic: Topic; readonly place: number } | null {
  const fits = (topic: Topic) => {
    if (quantity.unit !== null && topic.said.unit !== quantity.unit.unit) return false;
    const high = topic.of === 'price' ? (quantity.money ?? quantity.high) : quantity.high;
    // Whole money behind other money is that of a part.
    if (topic.of === 'price' && quantity.money === undefined && high > (topic.low ?? 0))
      return false;
    if (topic.low === null || topic.low === 0)
      return topic.said.unit === 'kcal' ? high >= 10 && high < 10000 : high < 2000;
    return high / topic.low < FAR && topic.low / high < FAR;
  };
  if (row.length === 1 || ordered) {
    const topic = row[place];
    return topic && fits(topic) ? { topic, place } : null;
  }
  const distance = (topic: Topic) =>
    topic.low === null || !fits(topic) ? Infinity : Math.abs(Math.log(quantity.high / topic.low));
  const sorted = row
    .map((topic, at) => ({ topic, place: at, far: distance(topic) }))
    .sort((a, b) => a.far - b.far);
  const [first, second] = sorted;
  if (!first || first.far === Infinity) return null;
  return second && second.far - first.far < Math.log(CLEARLY) ? null : first;
}

function give(text: Text, quantity: Quantity, topic: Topic): void {
  const own = topic.of === 'nutrient' ? ofIngredient(text, quantity, []) : null;
  quantity.said = { ...topic.said, ...own };
  if (topic.of === 'price' && quantity.money !== undefined) {
    quantity.low = quantity.high = quantity.money;
  }
}
