import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { areApart, ofValue, timesRange, type SaidValue } from '#lib/claims/contradict/said-values';
import { groupedBy } from '#lib/claims/contradict/grouped-by';
import { nearestIn, type Found } from '#lib/claims/contradict/nearest-value';
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
  const keyOf = ({ thing, nutrient }: SaidValue) => `${thing} ${nutrient}`;
  const searched = (of: SaidValue['scope']) => {
    const own = values.filter((value) => value.scope === of);
    const groups = [...groupedBy(own, keyOf)];
    return new Map(
      groups.map(([key, all]) => [key, { first: all[0], nearest: nearestIn(all) }] as const),
    );
  };
  const wholes = searched('whole');
  const dishes: ReturnType<typeof searched> = scope === 'half' ? searched('dish') : new Map();
  const wholeOf = (part: SaidValue): SaidValue | undefined => {
    const whole = wholes.get(keyOf(part));
    const near = whole?.nearest(part, Infinity);
    const dish = dishes.get(keyOf(part))?.nearest(part, BREATH);
    if (!near) return dish?.value ?? whole?.first;
    return dish && isBefore(dish, near) ? dish.value : near.value;
  };
  const place = new Map(values.map((value, index) => [value, index]));
  const isBefore = (a: Found, b: Found) =>
    a.gap < b.gap || (a.gap === b.gap && (place.get(a.value) ?? 0) < (place.get(b.value) ?? 0));
  const told = new Set<string>();
  return values
    .filter((value) => value.scope === scope)
    .flatMap((part) => {
      const whole = wholeOf(part);
      if (!whole) return [];
      // The same two values said again are the same contradiction.
      const pair = `${keyOf(part)} ${part.text} ${whole.text}`;
      if (told.has(pair)) return [];
      told.add(pair);
      return [[part, whole]] as const;
    });
}

/** UTF-16 units between a half and what it is half of, where that is not said to be the whole. */
const BREATH = 160;
