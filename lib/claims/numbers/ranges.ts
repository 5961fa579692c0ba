import type { UnitRole } from '../language';
import type { Quantity } from './quantity';
import type { Text } from '../words/text';

/** The widest range that is said with both its units: 'forty minutes to two hours'. */
const WIDEST = 4;

const factorOf = (unit: UnitRole | null): number | null =>
  unit === null ? null : 'factor' in unit ? unit.factor : 1;

/**
 * One range where two numbers with units of one kind are joined by 'to': 'fifty-five minutes to an hour', '30 g to
 * 35 g'. In the unit of the second. Null where they are two.
 */
export function rangeWithUnits(text: Text, low: Quantity, high: Quantity): Quantity | null {
  const { tokens, language } = text;
  const [first, second] = [low.unit, high.unit];
  if (!first || !second || first.of !== second.of || low.sentence !== high.sentence) return null;
  if (first.of === 'container' || first.of === 'degree') return null;
  if (first.of !== 'time' && first.unit !== second.unit) return null;
  if (high.begin !== low.end + 1 || !language.numbers.to.has(tokens[low.end]?.folded ?? ''))
    return null;
  if (low.low !== low.high || high.low !== high.high || high.hedge !== 'none') return null;
  const [from, to] = [factorOf(first), factorOf(second)];
  if (from === null || to === null) return null;
  const least = (low.low * from) / to;
  if (least >= high.low || high.low > least * WIDEST) return null;
  return {
    ...high,
    from: low.from,
    begin: low.begin,
    low: least,
    high: high.low,
    hedge: 'between',
    digits: low.digits || high.digits,
    words: low.words || high.words,
    fraction: low.fraction || high.fraction,
    parts: undefined,
    money: undefined,
    unsure: low.unsure || high.unsure,
  };
}
