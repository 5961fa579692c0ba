import type { Token } from '#lib/episode/read-ingredient-tokens';
import { numberAt, partAt } from '#lib/method/number';
import { purposeOf, type TimeUse } from '#lib/method/time-purpose';
import { phrase, word } from '#lib/method/words-at';

/** A time with its place among the tokens; an open end is null. */
export interface TimeAt {
  readonly from: number;
  readonly next: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly use: TimeUse;
  /** Days, weeks or months: how long something keeps, more often than not. */
  readonly days: boolean;
}

const OVERNIGHT = { low: 480, high: 720 } as const;

const UNITS: ReadonlyMap<string, number> = new Map([
  ...['second', 'seconds', 'sec', 'secs'].map((word) => [word, 1 / 60] as const),
  ...['minute', 'minutes', 'min', 'mins', "minutes'"].map((word) => [word, 1] as const),
  ...['hour', 'hours', 'hr', 'hrs', 'h', "hour's", "hours'"].map((word) => [word, 60] as const),
  ...['day', 'days'].map((word) => [word, 1440] as const),
  ...['week', 'weeks'].map((word) => [word, 10_080] as const),
  ...['month', 'months'].map((word) => [word, 43_200] as const),
]);

interface Span {
  readonly low: number;
  readonly high: number;
  readonly next: number;
  readonly unit: number;
}

function unitAt(tokens: readonly Token[], at: number): { unit: number; next: number } | null {
  // '10-minute', '5 more minutes'
  const joined = word(tokens, at) === '-' && !tokens[at]?.spaced;
  const dashed =
    joined || /^(?:more|further|extra|additional|full|whole)$/.test(word(tokens, at)) ? at + 1 : at;
  const text = word(tokens, dashed);
  const unit =
    UNITS.get(text) ?? (/^(?:s|m)$/.test(text) && !tokens[dashed]?.spaced ? shortUnit(text) : null);
  if (unit === null) return null;
  // A short form may end in a full stop.
  const stop = /^(?:sec|secs|min|mins|hr|hrs|h)$/.test(text) && word(tokens, dashed + 1) === '.';
  return { unit, next: dashed + (stop && tokens[dashed + 2] !== undefined ? 2 : 1) };
}

const shortUnit = (text: string): number => (text === 's' ? 1 / 60 : 1);

const RANGE = /^(?:-|–|—|−|to|~)$/;

/** One time with its unit, of one or two parts: '20 mins', '1 hour 40 minutes', '20 + 12 min'. */
function oneAt(tokens: readonly Token[], at: number): Span | null {
  const joined = /^(\d+)?h(\d+)$/.exec(word(tokens, at + 1));
  const first = numberAt(tokens, at);
  if (!first) return null;
  if (joined && tokens[at]?.kind === 'number' && !tokens[at + 1]?.spaced) {
    const value = first.value * 60 + Number(joined[2]);
    const after = unitAt(tokens, at + 2);
    return { low: value, high: value, next: after?.unit === 1 ? after.next : at + 2, unit: 60 };
  }
  const plus = word(tokens, first.next) === '+' ? numberAt(tokens, first.next + 1) : null;
  const both = plus && unitAt(tokens, plus.next);
  if (plus && both) {
    const value = (first.value + plus.value) * both.unit;
    return { low: value, high: value, next: both.next, unit: both.unit };
  }
  const unit = unitAt(tokens, first.next);
  if (!unit) return null;
  const value = first.value * unit.unit;
  const more = addedAt(tokens, unit.next, unit.unit);
  return more
    ? { low: value + more.value, high: value + more.value, next: more.next, unit: unit.unit }
    : { low: value, high: value, next: unit.next, unit: unit.unit };
}

/** What a smaller unit adds: '40 minutes', 'and 15 minutes', 'and a half'. */
function addedAt(
  tokens: readonly Token[],
  at: number,
  unit: number,
): { value: number; next: number } | null {
  const and = /^(?:and|,|&)$/.test(word(tokens, at));
  const from = and ? at + 1 : at;
  if (word(tokens, at) === 'and') {
    const part = partAt(tokens, from);
    if (part && !UNITS.has(word(tokens, part.next)))
      return { value: part.value * unit, next: part.next };
  }
  if (!and && tokens[at]?.kind !== 'number') return null;
  if (word(tokens, at) === ',') return null;
  const number = numberAt(tokens, from);
  const smaller = number && unitAt(tokens, number.next);
  if (!number || !smaller || smaller.unit >= unit || /^an?$/.test(word(tokens, from))) return null;
  // '1 hour 30' without its minutes stays unread: it may begin something else.
  return { value: number.value * smaller.unit, next: smaller.next };
}

/** One time or a range of two. */
function spanAt(tokens: readonly Token[], at: number): Span | null {
  if (word(tokens, at) === 'overnight') return { ...OVERNIGHT, next: at + 1, unit: 1440 };
  const between = word(tokens, at) === 'between';
  const from = between ? at + 1 : at;
  const first = oneAt(tokens, from);
  if (first) {
    // 'a minute or two'
    const or =
      word(tokens, first.next) === 'or' && /^(?:two|three|so)$/.test(word(tokens, first.next + 1));
    if (or && word(tokens, first.next + 1) !== 'so') {
      const most = word(tokens, first.next + 1) === 'two' ? 2 : 3;
      return UNITS.has(word(tokens, first.next + 2))
        ? first
        : { ...first, high: most * first.unit, next: first.next + 2 };
    }
    const dividing =
      RANGE.test(word(tokens, first.next)) || (between && word(tokens, first.next) === 'and');
    const second = dividing ? oneAt(tokens, first.next + 1) : null;
    return second && second.high >= first.low
      ? { ...first, high: second.high, next: second.next }
      : first;
  }
  const low = numberAt(tokens, from);
  if (!low) return null;
  const divides = word(tokens, low.next);
  if (!RANGE.test(divides) && divides !== 'or' && !(between && divides === 'and')) return null;
  const second = oneAt(tokens, low.next + 1);
  if (!second) return null;
  const least = low.value * second.unit;
  return least <= second.high ? { ...second, low: least } : null;
}

const LEAST_BEFORE =
  /(?:at least|minimum of|a minimum|minimum|no less than|not less than|at the least)$/;
const MOST_BEFORE =
  /(?:up to|no more than|not more than|maximum of|at most|no longer than|not longer than|at the most)$/;
const LEAST_AFTER =
  /^(?:or more|or longer|at least|at the least|minimum|at minimum|and more|or more if)\b/;
const MOST_AFTER = /^(?:maximum|max|at most|at the most|tops)\b/;
/** What may stand between a time and another that widens it. */
const LINKING =
  /^(?:or|and|but|preferably|ideally|better|,|\(|\)|for|even|still|up|to|at|least|most|as|long|yet)$/;

/** What comes after a time and moves its ends: 'or more', 'and up to 24 hours', 'or preferably overnight'. */
function opened(tokens: readonly Token[], from: number, span: Span): Omit<TimeAt, 'use'> {
  const hedge = phrase(tokens, from - 5, from).replace(/ (?:about|around|roughly)$/, '');
  const days = span.unit >= 1440 && !(span.low === 480 && span.high === 720);
  const after = phrase(tokens, span.next, span.next + 4);
  const more = furtherAt(tokens, span.next);
  const least = LEAST_BEFORE.test(hedge) || LEAST_AFTER.test(after);
  if (more) {
    const low = Math.min(span.low, more.low);
    return { from, next: more.next, low, high: Math.max(more.high, span.high), days };
  }
  if (least) return { from, next: span.next, low: span.low, high: null, days };
  if (MOST_BEFORE.test(hedge) || MOST_AFTER.test(after)) {
    return { from, next: span.next, low: null, high: span.high, days };
  }
  return { from, next: span.next, low: span.low, high: span.high, days };
}

/** 'or up to 2 days', 'and preferably overnight'; after 'overnight' also 'or for at least 8 hours'. */
function furtherAt(tokens: readonly Token[], at: number): Span | null {
  let place = at;
  while (place < at + 9 && LINKING.test(word(tokens, place))) place += 1;
  const span = place === at ? null : spanAt(tokens, place);
  if (!span) return null;
  const before = phrase(tokens, at, place);
  const nightAfter = word(tokens, place) === 'overnight';
  const nightBefore = word(tokens, at - 1) === 'overnight';
  const linked = /\b(?:or|and|but)\b/.test(before);
  const night = linked && (nightAfter || nightBefore);
  if (!night && !/\bup to\b|preferably|ideally|better/.test(before)) return null;
  const close = word(tokens, span.next) === ')' && before.includes('(') ? span.next + 1 : span.next;
  const low = nightBefore && !nightAfter ? span.low : Infinity;
  const high = nightBefore && !nightAfter ? 0 : span.high;
  return { ...span, low, high, next: close };
}

/** 'and then another 15': the unit of the time before it, where nothing else follows that could be counted. */
function unitLeftOut(tokens: readonly Token[], at: number, last: TimeAt | undefined): Span | null {
  if (!last || !/^(?:another|further)$/.test(word(tokens, at - 1))) return null;
  const number = numberAt(tokens, at);
  if (!number || !/^(?:|,|\.|;|\)|until|or|on|at|and|in)$/.test(word(tokens, number.next)))
    return null;
  const unit = (last.low ?? last.high ?? 0) >= 60 && number.value < 5 ? 60 : 1;
  return { low: number.value * unit, high: number.value * unit, next: number.next, unit };
}

/**
 * Every time of a sentence, in order, with what it is about. A number without a unit of time is none.
 * `timesOf(tokenize('Simmer for 20–25 mins'))` → 20 to 25 minutes, use 'step'.
 */
export function timesOf(tokens: readonly Token[]): TimeAt[] {
  const times: TimeAt[] = [];
  for (let at = 0; at < tokens.length;) {
    const span = spanAt(tokens, at) ?? unitLeftOut(tokens, at, times.at(-1));
    if (!span) {
      at += 1;
      continue;
    }
    const use = purposeOf(tokens, at, span.next);
    const time = opened(tokens, at, span);
    times.push({ ...time, use });
    at = Math.max(time.next, at + 1);
  }
  return times;
}
