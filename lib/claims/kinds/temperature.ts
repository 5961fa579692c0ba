import { lastBefore, markBehind } from '../words/context';
import type { Quantity, Said } from '../numbers/quantity';
import { only, type Text } from '../words/text';
import { saysNumber } from '../words/says-number';

/** Degrees that an oven and the inside of food may have, by what they are said in; beyond these nothing is read. */
const OVEN = { C: [60, 300], F: [200, 575] } as const;
const INSIDE = { C: [40, 99], F: [100, 215] } as const;
/** How far back, in tokens, the word for the place may stand; and for a number without degrees. */
const REACH = 16;
const BARE_REACH = 16;
const NEAR = 14;

/** The temperature that a number says, of the oven or of the inside of the food; null where it is none. */
export function temperatureOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  const { marks } = text;
  const gas = quantity.unit === null ? marks.before('gas', quantity.begin) : undefined;
  if (gas && quantity.high <= 10) {
    quantity.begin = gas.from;
    return { kind: 'ovenTemperature', unit: 'gas' };
  }
  const fan = fanOf(text, quantity);
  const degrees = quantity.unit?.of === 'degree' || (fan && quantity.unit === null);
  if (!degrees && (quantity.unit !== null || quantity.noun !== null)) return null;
  if (!degrees && isCountedLater(text, quantity)) return null;
  const place = fan ? 'oven' : placeOf(text, quantity, before, degrees);
  if (place === null) return null;
  const said = quantity.unit?.of === 'degree' ? quantity.unit.unit : null;
  const { fahrenheitFrom } = text.language;
  const unit = said ?? (quantity.low >= fahrenheitFrom[place] ? 'F' : 'C');
  const [low, high] = (place === 'oven' ? OVEN : INSIDE)[unit];
  if (quantity.low < low || quantity.high > high) return null;
  if (place === 'inside' && isOnTheWay(text, quantity)) {
    quantity.killed = 'on the way';
    return null;
  }
  if (fan) quantity.end = Math.max(quantity.end, fan);
  return place === 'inside'
    ? { kind: 'insideTemperature', unit }
    : { kind: 'ovenTemperature', unit, ...(fan ? { fan: true } : {}) };
}

/** Token behind the word for a fan, right behind the degrees or right before them; 0 without one. */
function fanOf({ marks }: Text, { end, begin }: Quantity): number {
  const behind = marks.at('fan', end);
  if (behind) return behind.to;
  const before = marks.before('fan', begin);
  // 'with fan then 180, without fan 200'
  return before && !marks.before('not', before.from) ? end : 0;
}

function placeOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
  degrees: boolean | 0,
): 'oven' | 'inside' | null {
  const word = markBehind(text, quantity.end, 'place', 3);
  // 'at two hundred, seventy one in the middle'
  const behind = word && !numberIn(text, quantity.end, word.from) ? word.role.place : undefined;
  const mark = lastBefore(text, quantity.begin, 'place', degrees ? REACH : BARE_REACH);
  // 'it comes out at one ten' says no place.
  if (!degrees && text.marks.before('comesTo', quantity.begin) && mark?.to === quantity.begin)
    return null;
  const linked =
    degrees ||
    isLed(text, quantity, before) ||
    isBeforeMinutes(text, quantity) ||
    isBesideFan(text, quantity);
  if (!linked && behind !== 'inside') return null;
  if (!degrees && isBehindMinutes(text, quantity, before) && isBare(text, quantity)) return 'oven';
  const elsewhere = mark?.role.place === 'elsewhere' && quantity.begin - mark.to <= ELSEWHERE;
  if (elsewhere) return null;
  if (behind === 'inside' && (degrees || isBare(text, quantity))) return 'inside';
  if (!degrees && !isBare(text, quantity)) return null;
  const near = before && quantity.begin - before.end <= NEAR ? kindOf(before) : null;
  const follows =
    before && only(text, before.end, quantity.begin, ['joiner', 'copula', 'which', 'hedge', 'not']);
  if (near && (follows || !mark || mark.from < (before?.begin ?? 0))) return near;
  if (mark?.role.place === 'elsewhere') return null;
  if (mark?.role.place === 'oven' || mark?.role.place === 'inside') return mark.role.place;
  if (near) return near;
  if (!degrees && !mark && isBehindMinutes(text, quantity, before)) return 'oven';
  if (!degrees && (isBeforeMinutes(text, quantity) || isBesideFan(text, quantity))) return 'oven';
  if (behind === 'oven') return 'oven';
  if (!degrees) return null;
  return isReached(text, quantity) ? 'inside' : byValue(quantity);
}

/** Tokens back from a number that is reached to the food that reaches it. */
const REACHED = 24;
/** Degrees that the inside of food reaches and that may be an oven's too, by the scale that is said. */
const EITHER = { least: 120, most: 212 } as const;

/** 'brown the mince till there is no pink, it gets to 160 degrees': what is reached is the food, where no oven is named. */
function isReached({ tokens, language }: Text, { begin, low, high, unit }: Quantity): boolean {
  if (unit?.of === 'degree' && unit.unit === 'C') return false;
  if (low < EITHER.least || high > EITHER.most) return false;
  const words = tokens.slice(Math.max(0, begin - REACHED), begin);
  const stop = words.findLastIndex(({ text }) => /^[.!?]$/.test(text));
  const before = words
    .slice(stop + 1)
    .map(({ text }) => text)
    .join(' ');
  const { reaches, reachedBy } = language.patterns;
  return reaches.test(before) && reachedBy.test(before);
}

/** 'twenty minutes at two hundred'. */
function isBehindMinutes(
  { marks }: Text,
  { begin, low }: Quantity,
  before: Quantity | undefined,
): boolean {
  const time = before?.said?.kind === 'minutes' && begin - before.end <= 2;
  return time && low >= 140 && low % 5 === 0 && marks.before('lead', begin) !== undefined;
}

/** Tokens in which a place that is no oven and no food holds: 'oil wants to be 175'. */
const ELSEWHERE = 5;
/** Tokens from degrees to the unit of the time that follows them. */
const TIME_REACH = 8;

/** 'at one eighty, fifty minutes', 'three twenty five for three and a half hours'. */
function isBeforeMinutes({ marks, tokens, language }: Text, { end, low, unit, noun }: Quantity) {
  if (unit !== null || noun !== null || low < 130 || low > 500 || low % 5 !== 0) return false;
  // 'four twenty five in the oven twenty five minutes'
  const where = marks.at('timeBehind', end);
  const place = where?.role.as === 'place' ? where.to : end;
  const mark = tokens[place]?.text === ',' || marks.at('serveTitle', place) !== undefined;
  const link = mark || place > end;
  const at = mark ? place + 1 : place;
  const next = tokens[at];
  const { article, half, fractions } = language.numbers;
  const word = next?.folded ?? '';
  const part = half.has(word) || fractions.has(word);
  const number = saysNumber(next, language) || part || article.has(word);
  return link && number && marks.firstIn('unit', at, at + TIME_REACH)?.role.of === 'time';
}

/** Tokens from degrees to those of a fan. */
const FAN_REACH = 6;

/** 'one ninety, or one seventy fan': the same oven without its fan. */
function isBesideFan({ marks, tokens, language }: Text, { end, low, unit, noun }: Quantity) {
  if (unit !== null || noun !== null || low < 130 || low > 500 || low % 5 !== 0) return false;
  const fan = marks.firstIn('fan', end + 1, end + FAN_REACH);
  if (!fan) return false;
  const { hundred, either } = language.numbers;
  const between = tokens.slice(end, fan.from);
  const counts = (token: (typeof between)[number]) =>
    saysNumber(token, language) || hundred.has(token.folded);
  return (
    between.some(counts) &&
    between.every(
      (token) => counts(token) || /^[,/(]$/.test(token.text) || either.has(token.folded),
    )
  );
}

function kindOf({ said }: Quantity): 'oven' | 'inside' | null {
  if (said?.kind === 'ovenTemperature') return 'oven';
  return said?.kind === 'insideTemperature' ? 'inside' : null;
}

/** Without any word for a place: what only an oven, or only a piece of food, may have. */
function byValue({ unit, low, high }: Quantity): 'oven' | 'inside' | null {
  const said = unit?.of === 'degree' ? unit.unit : null;
  if (said === 'F') return low >= 250 ? 'oven' : high >= 120 && high <= 212 ? 'inside' : null;
  if (low >= 120) return 'oven';
  return said === 'C' && high >= 50 && high < 100 ? 'inside' : null;
}

/** Whether a word before a bare number leads to it: 'at', 'to', 'it reads'. */
function isLed({ marks }: Text, { begin }: Quantity, before: Quantity | undefined): boolean {
  if (before && kindOf(before) && begin - before.end <= 2) return true;
  return (['lead', 'copula', 'place', 'correct'] as const).some((category) =>
    marks.before(category, begin),
  );
}

/** Whether nothing that is counted follows. */
function isBare({ marks, tokens, food }: Text, { end, parts, low }: Quantity): boolean {
  if (marks.at('thing', end) || marks.at('trapBehind', end) || food(end)) return false;
  if (tokens[end]?.kind === 'number') return false;
  return low >= 45 || parts !== undefined;
}

/** 'oven: 145, 102 and 165 kcal': a list whose last number says what they all count. */
function isCountedLater({ marks, tokens, language }: Text, { to }: Quantity): boolean {
  let at = to;
  for (let joined = 0; joined < MOST_LISTED; joined += 1) {
    const mark = marks.at('unit', at)?.role.of;
    if (joined > 0 && (marks.at('noun', at) || mark === 'energy' || mark === 'mass')) return true;
    if (tokens[at]?.text !== ',' && !language.numbers.and.has(tokens[at]?.folded ?? ''))
      return false;
    const next = tokens[at]?.text === ',' && language.numbers.and.has(tokens[at + 1]?.folded ?? '');
    at += next ? 2 : 1;
    if (tokens[at]?.kind !== 'number') return false;
    at += 1;
  }
  return false;
}

/** Numbers of a list at most. */
const MOST_LISTED = 8;

const numberIn = ({ tokens, language }: Text, from: number, to: number) =>
  tokens.slice(from, to).some((token) => saysNumber(token, language));

/** Tokens from a reading to the words that it goes back in. */
const ON_THE_WAY = 9;

/** 'it's at 158, so back in'. */
function isOnTheWay(text: Text, quantity: Quantity): boolean {
  const back = markBehind(text, quantity.end, 'back', ON_THE_WAY);
  return back !== undefined && !numberIn(text, quantity.end, back.from);
}
