import { isOpen } from '../numbers/open-number';
import { MOST_EATEN, type Quantity, type Said } from '../numbers/quantity';
import type { Mention } from './scope-mentions';
import type { Scope } from '../statement';
import type { Text } from '../words/text';

/** How many parts of a kind there are, with its place. */
interface Count {
  readonly from: number;
  readonly to: number;
  readonly many: number;
  /** Null where they are not all of a kind that the dish makes: 'the tray of nine', 'for three tacos'. */
  readonly part: 'portion' | 'slice' | 'each' | null;
}

/** Tokens from a number to the one that it is so many times of, and numbers between them. */
const REACH = 70;
const BETWEEN = 8;
/** By which share a part that was rounded may be off. */
const ROUNDED = 0.01;

/** Of which part a number is, by what was counted. */
export const partOf = (unit: Said['unit']): 'each' | 'slice' | 'portion' =>
  unit === 'piece' ? 'each' : unit === 'slice' ? 'slice' : 'portion';

/** 'eight slices', 'five bowls', 'four of us': how many parts there are. */
function countsOf({ marks, tokens, language }: Text, quantities: readonly Quantity[]): Count[] {
  return quantities.flatMap(
    ({ said, killed, unit, noun, low, high, begin, end, from }): Count[] => {
      if (low !== high || low < 2 || !Number.isInteger(low) || killed !== null) return [];
      const at = { from: begin, to: end, many: low };
      if (said?.kind === 'portions') {
        return [{ ...at, part: partOf(said.unit) }];
      }
      if (said !== null || unit || noun) return [];
      const thing = marks.at('thing', end)?.role.as;
      if (thing === 'person') return marks.before('eat', from) ? [] : [{ ...at, part: 'portion' }];
      // 'for the tray of nine'
      const of = language.numbers.of.has(tokens[begin - 1]?.folded ?? '');
      const vessel = of && marks.before('thing', begin - 1)?.role.as === 'whole';
      // 'for three tacos you get 360 calories'
      const eaten = thing === 'piece' || thing === 'portion' || thing === 'slice';
      return vessel || eaten ? [{ ...at, part: null }] : [];
    },
  );
}

/** Kilocalories that a number without a noun has at least, where it is so many times those of a part. */
const LEAST = 100;
/** Tokens before such a number in which words draw a conclusion. */
const SO = 14;

/**
 * Numbers without a noun that are energy by how many parts there are: '380 calories a square … so for the tray of nine
 * you are looking at 3420'; or a few times what one part has.
 */
export function sayByCounts(text: Text, quantities: readonly Quantity[]): void {
  const countBefore = lastCount(countsOf(text, quantities));
  quantities.forEach((quantity, index) => {
    const { begin, end, low, high } = quantity;
    const count = countBefore(end);
    if (low !== high || low < LEAST || !isOpen(text, quantity)) return;
    if (!text.marks.lastIn('so', begin - SO, begin)) return;
    const one = lastEnergy(quantities, index);
    if (!one || begin - one.end > REACH) return;
    const times = low / one.low;
    const few = Number.isInteger(times) && times >= 2 && times <= MOST_EATEN;
    const many = count !== undefined && (times === count.many || low * count.many === one.low);
    if (few || many) quantity.said = { kind: 'nutrient', nutrient: 'energyKcal', unit: 'kcal' };
  });
}

/** The energy that was said last before a number. */
function lastEnergy(quantities: readonly Quantity[], index: number): Quantity | undefined {
  return quantities
    .slice(Math.max(0, index - BETWEEN), index)
    .reverse()
    .find(({ said, killed }) => said?.nutrient === 'energyKcal' && killed === null);
}

/**
 * Numbers that are so many times another one, or its part, by how many parts the text counts: 'the pot is 1400 calories,
 * I got five bowls, so two eighty' is of a bowl, 'four of them, so 2120' of all. A number that is a multiple of one of
 * the same part without such a count is of no part that has a name here: 'if you have three that is twenty seven'.
 */
export function partsByCounts(
  text: Text,
  quantities: readonly Quantity[],
  fixed: ReadonlyMap<Quantity, Mention>,
): Map<Quantity, Mention> {
  const found = new Map<Quantity, Mention>();
  const countBefore = lastCount(countsOf(text, quantities));
  quantities.forEach((quantity, index) => {
    const { begin, end, partOf } = quantity;
    const count = countBefore(end);
    const { nutrient, scope: known } = quantity.said ?? {};
    if (nutrient === undefined || known !== undefined || partOf === 1 / 2) return;
    const own = fixed.get(quantity);
    for (let at = index - 1; at >= Math.max(0, index - BETWEEN); at -= 1) {
      const other = quantities[at];
      if (!other || begin - other.end > REACH) break;
      if (other.said?.nutrient !== nutrient || other.said?.scope !== undefined) continue;
      // A part of its own wins, but for 'each', of which there are so many, and a share: 'an eighth of that'.
      const share = own?.scope === 'unknown' && partOf !== undefined;
      const said = own && own !== fixed.get(other) && own.mark.from >= other.end;
      if (said && own.mark.role.link !== 'counted' && !share) return;
      const scope = found.get(other)?.scope ?? fixed.get(other)?.scope;
      const part = scope && partOfTimes(quantity, other, scope, count, own);
      if (part) found.set(quantity, part);
      return;
    }
  });
  return found;
}

function partOfTimes(
  { low, high }: Quantity,
  other: Quantity,
  scope: Scope,
  count: Count | undefined,
  own: Mention | undefined,
): Mention | null {
  if (low !== high || other.low !== other.high || other.low <= 0) return null;
  if (scope === 'whole' && count?.part)
    return isTimes(low, count.many, other.low) ? mention(count.part, count) : null;
  if (scope !== 'portion' && scope !== 'slice' && scope !== 'each') return null;
  if (count && count.part === scope && isTimes(other.low, count.many, low))
    return mention('whole', count);
  const times = low / other.low;
  if (!own || times < 2 || times > MOST_EATEN || !Number.isInteger(times)) return null;
  return mention('unknown', { from: own.mark.from, to: own.mark.to });
}

/** Whether so many of a number, which may be rounded, are another. */
const isTimes = (one: number, many: number, all: number) =>
  Math.abs(one * many - all) <= Math.max(many / 2, ROUNDED * all);

/** The count that was said last before a token; asked for tokens from left to right. */
function lastCount(counts: readonly Count[]): (at: number) => Count | undefined {
  let next = 0;
  return (at) => {
    while ((counts[next]?.from ?? Infinity) < at) next += 1;
    return counts[next - 1];
  };
}

const mention = (scope: Scope, { from, to }: Pick<Count, 'from' | 'to'>): Mention => ({
  scope,
  mark: { role: { cat: 'scope', scope, link: 'free' }, from, to },
});
