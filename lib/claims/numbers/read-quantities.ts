import { besideMacro } from '../words/macros';
import { hedgeBefore } from './hedge-before';
import { hedgeBehind, isOfNumberBefore } from './hedge-behind';
import type { UnitRole } from '../language';
import type { Mark } from '../words/marks';
import { afterUnit, asMoney, currencyBefore, orMore } from './behind-unit';
import { numberContext } from './number-context';
import { numberAt, type NumberSpan } from './numbers';
import type { Quantity } from './quantity';
import type { Hedge } from '../statement';
import { saysNumber } from '../words/says-number';
import type { Text } from '../words/text';
import { rangeWithUnits } from './ranges';
import { followedByCopula } from '../words/followed-by-copula';
import { holdsFood } from '../words/holds-food';

/** The numbers of a text in order, each with its hedge and its unit. */
export function readQuantities(text: Text): Quantity[] {
  const context = numberContext(text);
  const found: Quantity[] = [];
  let end = 0;
  for (let at = 0; at < text.tokens.length;) {
    const skipped = partSaid(text, at);
    if (skipped > at) {
      at = skipped;
      continue;
    }
    const span =
      isPartOfName(text, at) || isPronoun(text, at) ? null : numberAt(text.tokens, at, context);
    if (!span) {
      at += 1;
      continue;
    }
    const [degrees, rest] = splitDegrees(text, span);
    if (degrees) {
      found.push(quantityOf(text, degrees, end));
      end = degrees.to;
    }
    const quantity = quantityOf(text, degrees ? rest : chosen(text, span), end);
    const last = found.at(-1);
    const range = last && rangeWithUnits(text, last, quantity);
    if (range) found[found.length - 1] = range;
    else found.push(quantity);
    end = quantity.end;
    at = Math.max(quantity.unitEnd, quantity.to, at + 1);
  }
  return found;
}

/** A number said of a part of the dish is none of its own: 'one bowl', 'per 100 g', 'half the tray', 'half of that'. */
function partSaid(text: Text, at: number): number {
  const scope = text.marks.at('scope', at);
  const times = text.marks.at('times', at);
  // 'and there are four of them'
  const counted =
    text.marks.at('ofThem', at + 1) && text.marks.before('serve', at)?.role.as === 'any';
  // 'for one pound forty a head'
  const one = scope && text.language.numbers.cardinals.has(text.tokens[scope.to - 1]?.folded ?? '');
  // 'all 8 lunches'
  const many =
    scope && scope.role.scope === 'whole' && saysNumber(text.tokens[scope.to - 1], text.language);
  const made = many && text.marks.at('thing', scope.to)?.role.as === 'meal';
  const counts = made || (one && text.marks.at('unit', scope.to)?.role.of === 'mass');
  if (scope && !counts && !counted && !holdsFood(text, scope)) {
    if (scope.role.link !== 'subject' || followedByCopula(text, scope.to)) return scope.to;
  }
  return times ? times.to : at;
}

/** Digits right behind letters are a name, but for the letters of the macronutrients. */
function isPartOfName({ tokens, language }: Text, at: number): boolean {
  const [before, token] = [tokens[at - 1], tokens[at]];
  return (
    token?.kind === 'number' &&
    token.glued &&
    before?.kind === 'word' &&
    !language.letters.has(before.text)
  );
}

/** 'the one from the shop', 'the protein one', 'the canned one' count nothing. */
function isPronoun({ tokens, marks, language, food }: Text, at: number): boolean {
  const { cardinals, pointers } = language.numbers;
  const one = cardinals.get(tokens[at]?.folded ?? '') === 1;
  // 'protein carbs and fat on this one fifty two sixty and eleven'
  const led = marks.before('asWord', at - 1) ?? marks.before('serveTitle', at - 1);
  if (one && led && language.claims.subjects.has(tokens[at - 1]?.folded ?? '')) return true;
  const before = tokens[at - 1];
  const described = before?.kind === 'word' && !cardinals.has(before.folded) && !food(at + 1);
  const kind = marks.before('noun', at)?.from ?? at;
  return (
    cardinals.get(tokens[at]?.folded ?? '') === 1 &&
    (pointers.has(tokens[kind - 1]?.folded ?? '') ||
      (described && pointers.has(tokens[at - 2]?.folded ?? ''))) &&
    !marks.at('unit', at + 1) &&
    !cardinals.has(tokens[at + 1]?.folded ?? '') &&
    !language.numbers.hundred.has(tokens[at + 1]?.folded ?? '')
  );
}

/** Degrees that an oven has at least and at most where minutes run on behind them. */
const OVEN = [140, 500] as const;

/** 'at three ninety six minutes': degrees, and minutes that run on behind them. */
function splitDegrees(text: Text, span: NumberSpan): readonly [NumberSpan | null, NumberSpan] {
  const { marks } = text;
  const [first, second] = span.parts ?? [];
  const time = marks.at('unit', span.to)?.role;
  const ones = second ? second.value % 10 : 0;
  const low = first && second ? first.value * 100 + second.value - ones : 0;
  const said = time?.of === 'time' && time.unit === 'min' && span.words && second?.next === span.to;
  const led = marks.before('lead', span.from) ?? marks.before('place', span.from);
  const run = said && ones > 0 && second.value > 20 && second.next - second.from === 2;
  if (!run || !led || low < OVEN[0] || low > OVEN[1]) return [null, span];
  const { parts: _, money: __, ...plain } = span;
  const at = span.to - 1;
  return [
    { ...plain, to: at, low, high: low },
    { ...plain, from: at, low: ones, high: ones },
  ];
}

/** A second group this many times the first is no other end of a range: 'three ninety six minutes'. */
const FAR = 4;

/** Two groups before a unit of time are a range, or money; else the number run on. */
function chosen({ marks, tokens, language }: Text, span: NumberSpan): NumberSpan {
  const { parts, money } = span;
  if (!parts || money === undefined) return span;
  const role = marks.at('unit', span.to)?.role;
  const currency = language.currencies.has(tokens[span.from - 1]?.text ?? '');
  const [first, second] = parts;
  const range = first && second && first.value < second.value && second.value < first.value * FAR;
  if (role?.of === 'time' && range && role.unit !== 'h') {
    return { ...span, low: first.value, high: second.value, unsure: true };
  }
  // 'thirty five forty grams': no food has thousands of grams of a nutrient.
  const grams = role?.of === 'mass' && role.unit === 'g' && span.low >= 1000;
  if (grams && first && second && first.value < second.value) {
    return { ...span, low: first.value, high: second.value, unsure: true };
  }
  return role?.of === 'money' || currency ? { ...span, low: money, high: money } : span;
}

function quantityOf(text: Text, span: NumberSpan, free: number): Quantity {
  const { tokens, marks, language, sentences } = text;
  let begin = span.from;
  let { low, high } = span;
  let fraction = span.fraction;
  const money = begin > free ? currencyBefore(text, begin) : null;
  const currency = money?.unit;
  if (money) begin = money.from;
  let hedge: Hedge = low === high ? 'none' : 'between';
  const set = (said: Hedge) => {
    if (hedge === 'none') hedge = said;
  };
  for (;;) {
    const mark = hedgeBefore(text, begin);
    if (!mark || mark.from < free || isOfNumberBefore(text, mark)) break;
    set(mark.role.hedge);
    begin = mark.from;
  }
  let at = span.to;
  const behind = () => {
    const plus = tokens[at]?.text === '+' && tokens[at]?.glued;
    const said = plus ? { value: 'atLeast' as const, next: at + 1 } : hedgeBehind(text, at);
    if (!said) return false;
    set(said.value);
    at = said.next;
    return true;
  };
  const unitAt = (place: number) => {
    // 'three ninety nine a pack' counts no packs.
    const one = language.numbers.article.has(tokens[place]?.folded ?? '');
    const plain = !one && language.foods.plain.has(tokens[place]?.folded ?? '');
    const skip = plain ? place + 1 : place;
    const more = marks.at('than', place);
    const later = more && marks.at('unit', more.to);
    // 'ten more minutes'
    if (later?.role.of === 'time') return later;
    const mark = marks.at('unit', place) ?? marks.at('unit', skip);
    const letter = language.letters.has(tokens[place]?.text ?? '');
    if (letter && text.macros().has(sentences.of[place] ?? 0)) return undefined;
    return mark && (mark.from === place || ['container', 'volume', 'mass'].includes(mark.role.of))
      ? mark
      : undefined;
  };
  let mark: Mark<'unit'> | undefined = unitAt(at);
  if (!mark && behind()) mark = unitAt(at);
  if (mark) mark = asMoney(text, mark, begin);
  let unit: UnitRole | null = currency
    ? { cat: 'unit', of: 'money', unit: currency, factor: 1 }
    : (mark?.role ?? null);
  // 'p' behind digits is pence, unless it is the letter of a nutrient.
  const coin = language.moneyLetters.get(tokens[at]?.text ?? '');
  const behindNumber = tokens[at]?.glued === true || (text.spoken && !span.digits);
  if (!unit && coin && behindNumber && !besideMacro(text, at)) {
    unit = { cat: 'unit', of: 'money', ...coin };
    mark = undefined;
    at += 1;
  }
  if (mark) {
    at = mark.to;
    const more = afterUnit(text, mark, low, at);
    if (more) {
      low += more.add;
      high += more.add;
      fraction ||= more.fraction;
      at = more.next;
    }
    const or = span.words && low === 1 && high === 1 ? orMore(text, at) : null;
    if (or) {
      high = or.high;
      at = or.next;
      hedge = 'between';
    }
  }
  const unitEnd = at;
  if (mark || currency) behind();
  return {
    from: span.from,
    to: span.to,
    begin,
    end: Math.max(at, span.to),
    low,
    high,
    digits: span.digits,
    words: span.words,
    fraction,
    parts: span.parts,
    money: span.money,
    unsure: span.unsure === true,
    hedge,
    unit,
    unitEnd,
    sentence: sentences.of[span.from] ?? 0,
    noun: null,
    list: false,
    corrected: false,
    killed: null,
    said: null,
    how: [],
  };
}
