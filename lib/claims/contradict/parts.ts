import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { areApart, ofValue, timesRange, type SaidValue } from '#lib/claims/contradict/said-values';
import type { Region } from '#lib/figures/line-parts';

/** How many parts a dish is said to have, or has; `as` what they are called. */
export interface SaidCount {
  readonly thing: string;
  readonly as: 'portion' | 'piece' | 'slice';
  readonly low: number;
  readonly high: number;
}

/** A half that is not half of what is said of the whole. */
export function halves(values: readonly SaidValue[], region: Region): Contradiction[] {
  return pairsOf(values, 'half').flatMap(([half, whole]) => {
    if (!areApart(timesRange(half.interval, 2, 2), whole.interval)) return [];
    const right = ofValue((whole.low + whole.high) / 4, whole.nutrient, region);
    return [
      contradiction({
        kind: 'half',
        nutrient: half.nutrient,
        segmentId: half.segmentId,
        words: `half of ${whole.text} is ${right}, not ${half.text}`,
        sides: sidesOf(whole, half),
      }),
    ];
  });
}

const PART = { portion: 'portion', piece: 'each', slice: 'slice' } as const;

/** One portion, piece or slice that does not come to the whole, times as many as there are said to be. */
export function parts(
  values: readonly SaidValue[],
  counts: readonly SaidCount[],
  region: Region,
): Contradiction[] {
  const byThing = new Map<string, SaidCount[]>();
  for (const count of counts) {
    const key = `${count.thing} ${PART[count.as]}`;
    byThing.set(key, [...(byThing.get(key) ?? []), count]);
  }
  return Object.values(PART).flatMap((scope) =>
    pairsOf(values, scope).flatMap(([part, whole]) => {
      const same = byThing.get(`${part.thing} ${scope}`) ?? [];
      const [first] = same;
      // Where several numbers of them are said, one that fits is enough.
      const fits = ({ low, high }: SaidCount) =>
        !areApart(timesRange(part.interval, low, high), whole.interval);
      if (!first || same.some(fits)) return [];
      const { low, high } = first;
      const many = low === high ? `${low}` : `${low} to ${high}`;
      const middle = ((part.low + part.high) / 2) * ((low + high) / 2);
      return [
        contradiction({
          kind: 'each',
          nutrient: part.nutrient,
          segmentId: part.segmentId,
          words: `${many} times ${part.text} is ${ofValue(middle, part.nutrient, region)}, not ${whole.text}`,
          sides: sidesOf(whole, part),
        }),
      ];
    }),
  );
}

const sidesOf = (whole: SaidValue, part: SaidValue) => [
  { value: whole.text, said: [whole.row] },
  { value: part.text, said: [part.row] },
];

/**
 * Each value of a part with the value of the whole that is said nearest to it. Half may also be of a dish without how
 * much of it, where that is said in the same breath.
 */
function pairsOf(
  values: readonly SaidValue[],
  scope: SaidValue['scope'],
): readonly (readonly [part: SaidValue, whole: SaidValue])[] {
  const things = new Map<string, SaidValue[]>();
  const keyOf = ({ thing, nutrient, text }: SaidValue) => ({ key: `${thing} ${nutrient}`, text });
  const wholes = values.filter((each) => each.scope === 'whole' || each.scope === 'dish');
  for (const whole of wholes) {
    const { key } = keyOf(whole);
    const known = things.get(key);
    if (known) known.push(whole);
    else things.set(key, [whole]);
  }
  const told = new Set<string>();
  return values
    .filter((value) => value.scope === scope)
    .flatMap((part) => {
      const { key, text } = keyOf(part);
      const found = (things.get(key) ?? []).filter(
        (each) => each.scope === 'whole' || (scope === 'half' && gap(part, each) <= BREATH),
      );
      const [first] = found;
      if (!first) return [];
      const whole = found.reduce(
        (best, each) => (gap(part, each) < gap(part, best) ? each : best),
        first,
      );
      // The same two values said again are the same contradiction.
      const pair = `${key} ${text} ${whole.text}`;
      if (told.has(pair)) return [];
      told.add(pair);
      return [[part, whole]] as const;
    });
}

/** UTF-16 units between a half and what it is half of, where that is not said to be the whole. */
const BREATH = 160;

function gap({ row: a }: SaidValue, { row: b }: SaidValue): number {
  if (a.place.textId !== b.place.textId) return Infinity;
  return (
    Math.max(a.statement.start, b.statement.start) - Math.min(a.statement.end, b.statement.end)
  );
}
