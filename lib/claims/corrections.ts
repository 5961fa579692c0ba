import { isBareHundred } from './bare-numbers';
import { sentenceStart } from './context';
import type { Mark } from './marks';
import type { Quantity } from './quantity';
import { only, type Text } from './text';

/** Tokens between a number and the words that take it back, and between these and the number that stands. */
const REACH = { strong: 12, weak: 1 } as const;
const BEHIND = { strong: 8, weak: 2 } as const;

/** Withdraws numbers that are corrected: the number that stands takes over what the withdrawn one counted. */
export function withdraw(text: Text, quantities: readonly Quantity[]): void {
  const marks = text.marks.all('correct');
  let next = 0;
  let skipTo = 0;
  for (const mark of marks) {
    if (mark.from < skipTo) continue;
    if (mark.role.how === 'heading' && isHeading(text, mark)) {
      heading(quantities, mark);
      skipTo = mark.to;
      continue;
    }
    while (next < quantities.length && (quantities[next]?.begin ?? 0) < mark.to) next += 1;
    correct(text, quantities, next, mark, mark.role.how === 'weak' ? 'weak' : 'strong');
    skipTo = mark.to;
  }
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
  const stands = quantities[index];
  if (!stands || stands.begin - mark.to > BEHIND[how]) return;
  for (let at = index - 1; at >= Math.max(0, index - 3); at -= 1) {
    const taken = quantities[at];
    if (!taken || mark.from - taken.end > REACH[how]) return;
    if (taken.killed !== null || !alike(taken, stands)) continue;
    if (how === 'weak' && !only(text, taken.end, mark.from, ['joiner', 'filler', 'small'])) return;
    taken.killed = 'taken back';
    // 'hang on, that's for a raw hundred'
    if (isBareHundred(text, stands)) stands.killed ??= 'so much of it';
    stands.corrected = true;
    stands.killed = stands.killed === 'denied' ? null : stands.killed;
    takeOver(taken, stands);
    return;
  }
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
  return taken.unit?.unit === stands.unit?.unit;
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
function heading(quantities: readonly Quantity[], mark: Mark<'correct'>): void {
  const behind = quantities.filter(({ begin }) => begin >= mark.to && begin < mark.to + 40);
  const stands = behind.find(
    ({ killed, said, unit }) => killed === null && (said !== null || unit !== null),
  );
  if (!stands) return;
  stands.corrected = true;
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
