import type { Mark } from '../words/marks';
import { numberContext } from './number-context';
import { numberAt, partAt } from './numbers';
import type { Text } from '../words/text';

/** Pounds are money behind a word of cost, before pence, or with a part right behind, where no food follows. */
export function asMoney(text: Text, mark: Mark<'unit'>, begin: number): Mark<'unit'> {
  const { language, marks, tokens } = text;
  const unit = language.moneyUnits.get(mark.role.unit ?? '');
  if (unit === undefined || text.food(mark.to)) return mark;
  if (language.numbers.of.has(tokens[mark.to]?.folded ?? '')) return mark;
  const person = marks.at('serveTitle', mark.to) !== undefined && hasThing(text, mark.to + 1);
  // 'we fed six for nine pounds'
  const lead = marks.before('serveTitle', begin);
  const fed =
    lead &&
    (marks.lastIn('serve', begin - 4, begin) ?? marks.firstIn('serve', mark.to, mark.to + 3));
  const cents = language.numbers.cardinals.get(tokens[mark.to]?.folded ?? '') ?? 0;
  const part = marks.at('scope', mark.to) !== undefined || text.currency() === unit;
  // 'three pounds and nine pence'
  const and = language.numbers.and.has(tokens[mark.to]?.folded ?? '');
  const pence = and ? marks.firstIn('unit', mark.to + 2, mark.to + 4)?.role : undefined;
  if (pence?.of === 'money' && pence.factor < 1)
    return { ...mark, role: { cat: 'unit', of: 'money', unit, factor: 1 } };
  const cost = marks.lastIn('cost', Math.max(0, begin - 4), begin) !== undefined;
  // 'mince was on offer, three pound', 'a pound's worth of peppers'
  const dear =
    marks.lastIn('dear', begin - 4, begin) ??
    marks.lastIn('paid', begin - PAID, begin) ??
    marks.at('worth', mark.to);
  return cents >= 10 || dear !== undefined || part || cost || person || fed !== undefined
    ? { ...mark, role: { cat: 'unit', of: 'money', unit, factor: 1 } }
    : mark;
}

/** Tokens from a word for paying to pounds. */
const PAID = 8;

/** A counted part or person behind 'for': 'five pounds for four portions'. */
const hasThing = ({ marks }: Text, at: number) =>
  marks.at('thing', at) !== undefined || marks.at('thing', at + 1) !== undefined;

/** The sign of money before a number; with letters glued to it, as in 'A$', it has no name here, but for 'US$'. */
export function currencyBefore(
  { tokens, language }: Text,
  begin: number,
): { readonly unit: string; readonly from: number } | null {
  const sign = tokens[begin - 1];
  const unit = language.currencies.get(sign?.text ?? '');
  if (!sign || unit === undefined) return null;
  const before = tokens[begin - 2];
  if (before?.kind !== 'word' || !sign.glued) return { unit, from: begin - 1 };
  const own = language.currencyLetters.has(before.folded);
  return { unit: own ? unit : 'unknown', from: begin - 2 };
}

/** 'a minute or two', 'a cup or two': where nothing else is counted behind it. */
export function orMore(
  { tokens, language, marks, food }: Text,
  at: number,
): { readonly high: number; readonly next: number } | null {
  const { either, cardinals } = language.numbers;
  if (!either.has(tokens[at]?.folded ?? '')) return null;
  const high = cardinals.get(tokens[at + 1]?.folded ?? '') ?? 0;
  const next = at + 2;
  const counted = marks.at('unit', next) ?? marks.at('noun', next) ?? marks.at('thing', next);
  if (high < 2 || high > 4 || counted || food(next)) return null;
  return { high, next };
}

/** Minutes below which seconds are said as well, and the seconds that are. */
const MOST_EXACT = 15;
const QUARTERS: ReadonlySet<number> = new Set([15, 30, 45]);

/** Whether something that is counted begins at a token. */
const isCounted = ({ marks, food }: Text, at: number) =>
  (['unit', 'noun', 'thing', 'trapBehind'] as const).some((category) => marks.at(category, at)) ||
  food(at) !== null;

/** 'a pound and a half', 'two dollars nineteen', 'an hour and twenty minutes': what is added behind a unit. */
export function afterUnit(
  text: Text,
  { role }: Mark<'unit'>,
  value: number,
  at: number,
): { readonly add: number; readonly next: number; readonly fraction: boolean } | null {
  const { tokens, language, marks } = text;
  const words = language.numbers;
  const and = words.and.has(tokens[at]?.folded ?? '') ? at + 1 : at;
  if (role.of === 'time' && role.unit === 'h') {
    const more = numberAt(tokens, and, { ...numberContext(text), divisible: () => false });
    const minutes = more && marks.at('unit', more.to)?.role;
    if (more && minutes && minutes.of === 'time' && minutes.unit === 'min') {
      return {
        add: more.low / 60,
        next: marks.at('unit', more.to)?.to ?? more.to,
        fraction: false,
      };
    }
    // '1 hour 20 to 68 °C': no range of minutes.
    const alone = more?.low !== more?.high ? tokens[and] : undefined;
    const ten = alone?.kind === 'number' ? Number(alone.text) : NaN;
    if (ten > 0 && ten < 60 && ten % 5 === 0 && words.to.has(tokens[and + 1]?.folded ?? ''))
      return { add: ten / 60, next: and + 1, fraction: false };
    // 'an hour and ten'
    const bare =
      more &&
      (!more.digits || !text.spoken) &&
      more.low === more.high &&
      more.low < 60 &&
      more.low % 5 === 0;
    if (more && bare && !more.fraction && !isCounted(text, more.to)) {
      return { add: more.low / 60, next: more.to, fraction: false };
    }
    if (more?.digits && tokens[at]?.glued && more.low < 60 && Number.isInteger(value)) {
      return { add: more.low / 60, next: more.to, fraction: false };
    }
  }
  if (role.of === 'time' && role.unit === 'min' && Number.isInteger(value) && value < MOST_EXACT) {
    // 'two minutes thirty'
    const seconds = numberAt(tokens, at, { ...numberContext(text), divisible: () => false });
    const exact = seconds && QUARTERS.has(seconds.low) && seconds.low === seconds.high;
    if (exact && !seconds.parts && !isCounted(text, seconds.to))
      return { add: seconds.low / 60, next: seconds.to, fraction: false };
  }
  if (role.unit === 'lb') {
    // '1 lb 2 oz'
    const ounces = numberAt(tokens, and, { ...numberContext(text), divisible: () => false });
    const unit = ounces && marks.at('unit', ounces.to);
    if (ounces && unit?.role.unit === 'oz' && ounces.high < 16 && ounces.low === ounces.high)
      return { add: ounces.low / 16, next: unit.to, fraction: false };
  }
  if (role.of === 'money' && role.factor === 1) {
    const cents = numberAt(tokens, and, { ...numberContext(text), divisible: () => false });
    const counted = words.article.has(tokens[and]?.folded ?? '');
    // 'a dollar oh five'
    const nought = words.nought.has(tokens[and]?.folded ?? '') && and === at;
    const few = nought ? words.cardinals.get(tokens[and + 1]?.folded ?? '') : undefined;
    if (few !== undefined && few > 0 && few < 10)
      return { add: few / 100, next: and + 2, fraction: false };
    const whole = cents && !counted && cents.low === cents.high && Number.isInteger(cents.low);
    if (cents && whole && cents.low > 0 && cents.low < 100 && !cents.parts) {
      const unit = marks.at('unit', cents.to);
      const named = unit?.role.of === 'money' && unit.role.factor < 1;
      const other =
        unit !== undefined ||
        marks.at('noun', cents.to) !== undefined ||
        marks.at('thing', cents.to) !== undefined;
      if (named) return { add: cents.low / 100, next: unit.to, fraction: false };
      if (!other && and === at && (!cents.digits || cents.low >= 10))
        return { add: cents.low / 100, next: cents.to, fraction: false };
    }
  }
  if (and === at) return null;
  const part = partAt(tokens, and, words);
  // 'a euro and a half a bowl'
  const whole = role.of === 'money' && words.article.has(tokens[and]?.folded ?? '');
  const another = !whole && words.article.has(tokens[part?.next ?? 0]?.folded ?? '');
  if (!part || !Number.isInteger(value) || another) return null;
  // 'a cup and a half of milk' is one amount; 'a cup and half an onion' are two.
  return { add: part.value, next: part.next, fraction: true };
}
