import { lastBefore, markBefore, markBehind } from '../words/context';
import type { Quantity, Said } from '../numbers/quantity';
import { wordsAt } from '../numbers/number-words';
import { only, type Text } from '../words/text';

/** Minutes below which a time without an action is a turn of speech: 'two seconds'. */
const BRIEF = 1 / 6;
/** Tokens behind a thing that no one eats: 'I had the lens cap on for eleven minutes'. */
const GEAR = 5;
/** Tokens behind what a person did themselves: 'I ran ten k this morning in fifty minutes'. */
const SELF = 8;
/** Most minutes that a number without a unit says by where it cooks, and tokens back to the minutes said before. */
const PLACED = 90;

const LINKS = ['filler', 'hedge', 'copula', 'small', 'lead', 'scope'] as const;

/**
 * The time that a number says, in minutes: of an action on the dish, or until it is ready; null where it is of
 * something else. The number becomes minutes.
 */
export function timeOf(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  const { unit } = quantity;
  if (unit === null) return bareTime(text, quantity, before);
  if (unit.of !== 'time') return null;
  const first = markBefore(text, quantity, 'time', 4);
  // 'start to finish, forty minutes'
  const ready = first?.role.as === 'ready' || first?.role.as === 'soon';
  const links = ready ? ([...LINKS, 'joiner'] as const) : LINKS;
  const led = first && only(text, first.to, quantity.begin, links) ? first : undefined;
  const next = text.tokens[quantity.end]?.kind === 'word' ? 1 : 0;
  const behind = markBehind(text, quantity.end, 'timeBehind', next);
  quantity.low *= unit.factor;
  quantity.high *= unit.factor;
  if (behind?.role.as === 'side') {
    quantity.low *= 2;
    quantity.high *= 2;
    quantity.end = behind.to;
    return { kind: 'minutes', unit: 'min' };
  }
  if (behind?.role.as === 'before' && led?.role.as !== 'action') {
    quantity.killed = 'not of an action on the dish';
    return null;
  }
  const brief = quantity.high < BRIEF && led === undefined;
  // 'drop it to one sixty for fifty minutes' is said of the oven.
  const own = lastBefore(text, quantity.begin, 'self', SELF);
  const self = own && !text.marks.at('place', own.from);
  if (brief || self) {
    quantity.killed = 'not of an action on the dish';
    return null;
  }
  const none = led?.role.as === 'none' && only(text, led.to, quantity.begin, ['filler', 'hedge']);
  // 'three seventy five for forty minutes and it's done', '… till it reads 165'
  const baked = before?.said?.kind === 'ovenTemperature' && quantity.begin - before.end <= 2;
  if (baked && !none) return { kind: 'minutes', unit: 'min' };
  if (none || (behind?.role.as === 'none' && behind.from === quantity.end)) {
    quantity.killed = 'not of an action on the dish';
    return null;
  }
  const gear = lastBefore(text, quantity.begin, 'gear', GEAR);
  // 'in the slow cooker for six hours on low'
  const cooks = behind?.role.as === 'place' && behind.from === quantity.end;
  if (gear && !led && !cooks && !text.marks.at('place', gear.from)) {
    quantity.killed = 'not of an action on the dish';
    return null;
  }
  if (isForAll(text, quantity, before)) return { kind: 'readyIn', unit: 'min' };
  if (
    led?.role.as === 'ready' ||
    led?.role.as === 'soon' ||
    behind?.role.as === 'ready' ||
    isTitle(text, quantity, led !== undefined, before)
  ) {
    return { kind: 'readyIn', unit: 'min' };
  }
  return { kind: 'minutes', unit: 'min' };
}

/** 'dinner for four in forty minutes'. */
function isForAll({ marks }: Text, { begin }: Quantity, before: Quantity | undefined): boolean {
  return (
    before?.said?.kind === 'portions' &&
    begin - before.end === 1 &&
    marks.at('small', before.end) !== undefined
  );
}

/** In a title, or before a word of the dish's name: '25-minute peanut noodles'. */
function isTitle(
  { context, title, tokens, language }: Text,
  { begin, end }: Quantity,
  action: boolean,
  before: Quantity | undefined,
): boolean {
  if (context.form === 'title') return !action;
  // On a card a time on a line of its own is that of all.
  const line = (at: number) => tokens[at] === undefined || tokens[at]?.kind === 'line';
  const baked = before?.said?.kind === 'ovenTemperature';
  if (context.form === 'card' && line(begin - 1) && line(end) && !baked && !action) return true;
  const word = language.singular(tokens[end]?.folded ?? '');
  return word.length >= 3 && title.stems.includes(word);
}

/** 'for fifty minutes and then leave it in the tin for ten': an action some words before 'for'. */
function isLeft(text: Text, quantity: Quantity): boolean {
  const action = lastBefore(text, quantity.begin, 'time', 8);
  return (
    action?.role.as === 'action' &&
    text.marks.before('serveTitle', quantity.begin) !== undefined &&
    endsPlainly(text, quantity.end)
  );
}

const isAnother = ({ tokens, language }: Text, { begin }: Quantity) =>
  language.numbers.another.has(tokens[begin - 1]?.folded ?? '');

/** Degrees of an oven, °C or °F. */
const OVEN = { least: 140, most: 500 } as const;

/** The number that begins at a token, by its digits or its first words; 0 where none does. */
function numberValue({ tokens, language }: Text, at: number): number {
  const token = tokens[at];
  if (token?.kind === 'number') return Number(token.text);
  return wordsAt(tokens, at, language.numbers)?.value ?? 0;
}

/** Whether nothing that is counted follows. */
const endsPlainly = ({ tokens, marks, food }: Text, end: number) =>
  food(end) === null &&
  marks.at('thing', end) === undefined &&
  marks.at('trapBehind', end) === undefined &&
  !/^[%°$€£]$/.test(tokens[end]?.text ?? '') &&
  tokens[end]?.kind !== 'number';

/** 'another fifteen', 'then rest for 10', '8 of them', where minutes were said just before. */
function bareTime(text: Text, quantity: Quantity, before: Quantity | undefined): Said | null {
  if (quantity.noun || quantity.high > 240 || quantity.low < 1) return null;
  const soon = markBefore(text, quantity, 'time', 2);
  if (
    soon?.role.as === 'soon' &&
    only(text, soon.to, quantity.begin, LINKS) &&
    endsPlainly(text, quantity.end)
  ) {
    return { kind: 'readyIn', unit: 'min' };
  }
  if (!before?.said) return null;
  // 'chill it for half an hour serves eight'
  if ((text.marks.before('serve', quantity.begin)?.role.as ?? 'any') !== 'any') return null;
  // 'at one eighty for fifty'
  const baked =
    before.said.kind === 'ovenTemperature' &&
    quantity.begin - before.end === 1 &&
    text.marks.before('serveTitle', quantity.begin) !== undefined;
  if (baked && quantity.low >= 4 && endsPlainly(text, quantity.end))
    return { kind: 'minutes', unit: 'min' };
  // 'turn it down to one eighty and give it another twenty five', 'two twenty and about twenty'
  const oven = before.said.kind === 'ovenTemperature';
  const and = text.language.numbers.and.has(text.tokens[quantity.begin - 1]?.folded ?? '');
  const on = isAnother(text, quantity) || (and && quantity.begin - before.end === 1);
  const near = quantity.begin - before.end <= 14 && quantity.low >= 4 && quantity.high <= PLACED;
  if (oven && on && near && endsPlainly(text, quantity.end))
    return { kind: 'minutes', unit: 'min' };
  if (before.said.kind !== 'minutes' && before.said.kind !== 'readyIn') return null;
  const gap = quantity.begin - before.end;
  // 'ten minutes chopping, eight minutes frying, so under twenty start to finish'
  const whole = text.marks.at('timeBehind', quantity.end)?.role.as === 'ready';
  if (gap <= 8 && whole && quantity.high <= 240) return { kind: 'readyIn', unit: 'min' };
  // 'thirty four minutes, most of it is stirring, about eighteen of that'
  const part = quantity.high < before.high ? 14 : 3;
  const ofThem = gap <= part && text.marks.at('ofThem', quantity.end);
  const action = markBefore(text, quantity, 'time', 2);
  const led = action?.role.as === 'action' && only(text, action.to, quantity.begin, LINKS);
  const again =
    text.marks.before('back', quantity.begin) !== undefined || (led && quantity.noun === null);
  const more = gap <= 14 && again && endsPlainly(text, quantity.end);
  const than = text.marks.at('than', quantity.end);
  const extra = gap <= 8 && than?.role.against === 'more' && endsPlainly(text, than.to);
  const placed =
    gap <= 14 &&
    quantity.high <= PLACED &&
    text.marks.at('timeBehind', quantity.end)?.role.as === 'place';
  const left = gap <= 14 && quantity.high <= PLACED && isLeft(text, quantity);
  // 'nine minutes, ten tops'
  const most = gap <= 2 && quantity.hedge === 'atMost' && endsPlainly(text, quantity.end);
  // 'twelve minutes, sorry, ten at two hundred'
  const lead = text.marks.at('lead', quantity.end);
  const degrees = lead ? numberValue(text, lead.to) : 0;
  const baking =
    gap <= 14 && quantity.high <= PLACED && degrees >= OVEN.least && degrees <= OVEN.most;
  return ofThem || more || extra || placed || left || most || baking
    ? { kind: 'minutes', unit: 'min' }
    : null;
}
