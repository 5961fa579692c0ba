import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { groupedBy } from '#lib/claims/contradict/grouped-by';
import { areApart, isTitle, type SaidValue } from '#lib/claims/contradict/said-values';

/** What a number of a dish without how much of it may be divided by to be of a part of it. */
export type PartsOf = (segmentId: string) => readonly number[];

/**
 * Two values for one thing: the same nutrient of the same dish and the same part of it, or of the day. A number of a
 * dish without how much of it may be of all of it or of a part, so two of them, or one of them and a portion, that are a
 * whole number of times apart are left alone.
 */
export function twoValues(values: readonly SaidValue[], parts: PartsOf): Contradiction[] {
  const things = groupedBy(
    values.filter((value) => !isTitle(value.row) && isOfKnown(value)),
    ({ thing, scope, nutrient }) => `${thing} ${scope === 'portion' ? 'dish' : scope} ${nutrient}`,
  );
  return [...things.values()].flatMap((all) => {
    const sides = sidesOf(all, parts);
    const [first, ...others] = sides;
    const value = first?.[0];
    if (!value || others.length === 0) return [];
    const texts = sides.flatMap(([one]) => (one ? [one.text] : []));
    return [
      contradiction({
        kind: 'two',
        nutrient: value.nutrient,
        segmentId: value.segmentId,
        words: `${texts.slice(0, -1).join(', ')} and ${texts.at(-1) ?? ''} are said of the same thing`,
        sides: sides.map((side) => ({
          value: side[0]?.text ?? '',
          said: side.map(({ row }) => row),
        })),
      }),
    ];
  });
}

/** Where no dish is known, two values in a row are as likely of two things. */
const isOfKnown = ({ segmentId, scope }: SaidValue) => segmentId !== null || scope === 'day';

/** The values in groups that can hold together; of each the one that was said first begins it. */
function sidesOf(all: readonly SaidValue[], parts: PartsOf): SaidValue[][] {
  const sides: { readonly said: SaidValue[]; readonly distinct: SaidValue[] }[] = [];
  const sideOf = new Map<string, SaidValue[]>();
  for (const value of all) {
    // What is said again belongs where it was.
    const known = sideOf.get(keyOf(value));
    if (known) {
      known.push(value);
      continue;
    }
    const fits = (other: SaidValue) => !clash(value, other, parts);
    const side = sides.find(({ distinct }) => distinct.every(fits));
    const { said, distinct } = side ?? { said: [], distinct: [] };
    if (!side) sides.push({ said, distinct });
    said.push(value);
    distinct.push(value);
    sideOf.set(keyOf(value), said);
  }
  return sides.map(({ said }) => said);
}

const keyOf = ({ text, interval }: SaidValue) => `${text} ${interval.from} ${interval.to}`;

function clash(a: SaidValue, b: SaidValue, parts: PartsOf): boolean {
  if (!areApart(a.interval, b.interval)) return false;
  // A portion is a dish without how much of it, or one of a few parts of that.
  const anyPart = a.scope === 'dish' || b.scope === 'dish';
  return !(anyPart || isInOneBreath(a, b)) || !isOfParts(a, b, parts);
}

/** 'All four are 1,200 calories, so a pot is three hundred': what is said in one breath may be of a part. */
const BREATH = 80;

function isInOneBreath({ row: a }: SaidValue, { row: b }: SaidValue): boolean {
  if (a.place.textId !== b.place.textId) return false;
  const [first, second] =
    a.statement.start <= b.statement.start
      ? [a.statement, b.statement]
      : [b.statement, a.statement];
  return second.start - first.end <= BREATH;
}

/** Whether the one may be of a part of what the other is of. */
function isOfParts(a: SaidValue, b: SaidValue, parts: PartsOf): boolean {
  const counts = a.segmentId === null ? [] : parts(a.segmentId);
  const [small, large] = a.high <= b.high ? [a, b] : [b, a];
  const fits = (count: number) => {
    const { from, to } = small.interval;
    const times = { ...small.interval, from: Math.max(0, from) * count, to: to * count };
    return !areApart(times, large.interval);
  };
  return (counts.length > 0 ? [2, ...counts] : FEW).some(fits);
}

/** Portions that a dish may have where nobody says how many. Common practice, no source. */
const FEW = [2, 3, 4, 5, 6, 8, 9, 10, 12, 16, 20, 24];
