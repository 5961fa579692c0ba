import { isBareHundred } from '../numbers/bare-hundred';
import { sentenceStart } from '../words/context';
import type { Mark } from '../words/marks';
import type { Quantity } from '../numbers/quantity';
import { isSaidOfIt } from '../words/said-of-it';
import { only, type Text } from '../words/text';

/** Tokens between a number and the words that take it back, and between these and the number that stands. */
const REACH = { strong: 12, weak: 1 } as const;
const BEHIND = { strong: 8, weak: 2 } as const;

/** Withdraws numbers that are corrected: the number that stands takes over what the withdrawn one counted. */
export function withdraw(text: Text, quantities: readonly Quantity[]): void {
  const marks = text.marks.all('correct');
  let next = 0;
  let skipTo = 0;
  for (const mark of marks) {
    if (mark.from < skipTo || isConfirmed(text, mark)) continue;
    if (mark.role.how === 'heading' && isHeading(text, mark)) {
      heading(text, quantities, mark);
      skipTo = mark.to;
      continue;
    }
    while (next < quantities.length && (quantities[next]?.begin ?? 0) < mark.to) next += 1;
    correct(text, quantities, next, mark, mark.role.how === 'weak' ? 'weak' : 'strong');
    skipTo = mark.to;
  }
}

/** 'an hour, and I mean it': takes nothing back. */
function isConfirmed({ tokens, marks, language }: Text, { to }: Mark<'correct'>): boolean {
  const said = language.claims.subjects.has(tokens[to]?.folded ?? '') && !marks.at('copula', to);
  return said && (tokens[to + 1]?.kind !== 'word' || marks.at('joiner', to + 1) !== undefined);
}

function isHeading(text: Text, { from, to }: Mark<'correct'>): boolean {
  return (
    sentenceStart(text, from) === from &&
    (/^[:(–-]$/.test(text.tokens[to]?.text ?? '') || text.tokens[to]?.kind === 'word')
  );
}

function correct(
  text: Text,
  quantities: readonly Quantity[],
  index: number,
  mark: Mark<'correct'>,
  how: 'strong' | 'weak',
): void {
  const stands = standing(text, quantities, index, mark);
  const aside = isMistaken(text, mark) ? MISTAKEN : 0;
  if (!stands || stands.begin - mark.to > Math.max(BEHIND[how], aside)) return;
  for (let at = index - 1; at >= Math.max(0, index - 3); at -= 1) {
    const taken = quantities[at];
    if (!taken || mark.from - taken.end > REACH[how]) return;
    if (taken.end > mark.from) continue;
    if (taken.killed !== null || !alike(taken, stands)) continue;
    if (how === 'weak' && !isRightBehind(text, taken.end, mark.from)) return;
    taken.killed = 'taken back';
    // 'hang on, that's for a raw hundred'
    if (isBareHundred(text, stands)) stands.killed ??= 'so much of it';
    stands.corrected = true;
    stands.killed = stands.killed === 'denied' ? null : stands.killed;
    takeOver(taken, stands);
    return;
  }
}

/** Tokens from 'no sorry, I'm reading the lentil one' to the number that stands. */
const MISTAKEN = 14;

const isMistaken = ({ marks, tokens }: Text, { to }: Mark<'correct'>) =>
  marks.at('mistook', tokens[to]?.text === ',' ? to + 1 : to) !== undefined;

/** The number that stands: the next one, or the one behind 'the lentil one'. */
function standing(
  text: Text,
  quantities: readonly Quantity[],
  index: number,
  mark: Mark<'correct'>,
): Quantity | undefined {
  const next = quantities[index];
  if (!next || !isMistaken(text, mark)) return next;
  const one = next.low === 1 && next.unit === null && next.noun === null && next.said === null;
  return one ? quantities[index + 1] : next;
}

/** Whether a weak word follows a number at once, or as a sentence of its own: 'four ten. No. Four twenty.' */
function isRightBehind(text: Text, from: number, to: number): boolean {
  const stop = text.tokens[to - 1]?.text === '.' ? to - 1 : to;
  return only(text, from, stop, ['joiner', 'filler', 'small']);
}

/** Whether one may stand for the other: of the same kind, or one of them says not of what it is. */
function alike(taken: Quantity, stands: Quantity): boolean {
  const [a, b] = [taken.said, stands.said];
  if (a && b) {
    const foods = a.food === undefined || b.food === undefined || a.food === b.food;
    const units = a.unit === b.unit || (a.kind === 'amount' && foods && a.food !== undefined);
    return a.kind === b.kind && a.nutrient === b.nutrient && units && foods;
  }
  const fits = ({ unit, noun }: Quantity, said: NonNullable<Quantity['said']>) =>
    noun === null && (unit === null || unit.unit === said.unit);
  if (a && !b && isOtherMeasure(a.kind, stands)) return true;
  if (a && !b) return fits(stands, a) && plausible(taken, stands);
  if (b && !a) return fits(taken, b);
  return taken.unit?.unit === stands.unit?.unit && plausible(taken, stands);
}

/** 'two tablespoons of oil, I mean two teaspoons'. */
function isOtherMeasure(kind: string, { unit, noun }: Quantity): boolean {
  return kind === 'amount' && noun === null && (unit?.of === 'mass' || unit?.of === 'volume');
}

/** A bare number that takes over stands within a factor of five. */
function plausible(taken: Quantity, stands: Quantity): boolean {
  return stands.high <= 5 * taken.high && 5 * stands.high >= taken.high;
}

function takeOver(taken: Quantity, stands: Quantity): void {
  stands.noun ??= taken.noun;
  if (stands.said || !taken.said) return;
  const { unit } = stands;
  const measure = isOtherMeasure(taken.said.kind, stands) ? unit?.unit : undefined;
  stands.said = { ...taken.said, ...(typeof measure === 'string' ? { unit: measure } : {}) };
  if (taken.said.kind === 'price' && stands.money !== undefined && !Number.isInteger(taken.low)) {
    stands.low = stands.high = stands.money;
  }
}

/** 'Edit: the simmer is 40 minutes, not 30': the first number behind stands, and what it says is not was said before. */
function heading(text: Text, quantities: readonly Quantity[], mark: Mark<'correct'>): void {
  const behind = quantities.filter(({ begin }) => begin >= mark.to && begin < mark.to + 40);
  const stands = behind.find(
    (one) =>
      one.killed === null && (one.said !== null || one.unit !== null || isLed(text, one, mark)),
  );
  if (!stands) return;
  stands.corrected = true;
  withdrawEarlier(text, quantities, mark, stands);
  const denied = behind.filter(
    ({ killed, unit }) => killed === 'denied' || killed === 'said before' || unit === stands.unit,
  );
  for (const not of denied.filter(({ killed }) => killed !== null)) {
    for (const earlier of quantities) {
      if (earlier.begin >= mark.from) break;
      if (earlier.low === not.low && alike(earlier, stands) && earlier.said !== null)
        earlier.killed ??= 'taken back';
    }
  }
}

/** Tokens from a heading to a number that counts what was counted above it. */
const LED = 14;

/** 'Edit: 460', 'edit from later, I forgot the oil, it is 670'. */
function isLed(text: Text, { begin, end }: Quantity, { to }: Mark<'correct'>): boolean {
  const { marks } = text;
  if (begin - to > LED || (marks.at('thing', end) ?? marks.at('trapBehind', end))) return false;
  return only(text, to, begin, ['joiner', 'copula', 'hedge']) || isSaidOfIt(text, begin);
}

/** What a heading may say anew without saying of what it is. */
const CORRECTED: ReadonlySet<string> = new Set(['nutrient', 'ovenTemperature', 'price']);

/** Tokens from a nutrient to the heading that says it anew. */
const ABOVE = 60;

/** '430 calories a bowl. Edit: it's 460': the one number of that nutrient above is taken back. */
function withdrawEarlier(
  text: Text,
  quantities: readonly Quantity[],
  mark: Mark<'correct'>,
  stands: Quantity,
): void {
  if (!isLed(text, stands, mark)) return;
  const above = quantities.filter(
    (earlier) =>
      earlier.begin < mark.from &&
      mark.from - earlier.end <= ABOVE &&
      earlier.killed === null &&
      CORRECTED.has(earlier.said?.kind ?? '') &&
      alike(earlier, stands),
  );
  const [taken, other] = above;
  if (!taken || other || !plausible(taken, stands) || taken.low === stands.low) return;
  taken.killed = 'taken back';
  takeOver(taken, stands);
}
