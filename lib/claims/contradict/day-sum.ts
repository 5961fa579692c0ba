import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { areApart, ofValue, type SaidValue } from '#lib/claims/contradict/said-values';
import { groupedBy } from '#lib/claims/contradict/grouped-by';
import type { SaidInterval } from '#lib/claims/said-interval';
import type { Region } from '#lib/figures/line-parts';
import type { Nutrient } from '#lib/foods/nutrients';

/** A dish of the day, as far as it counts to it. */
export interface DayDish {
  readonly segmentId: string;
  /** The share of it that is eaten; null where that is by eye or by grams. */
  readonly eaten: number | null;
  /** How many portions it has, by what is said or by its own. */
  readonly portions: readonly number[];
}

/**
 * Dishes that do not come to what is said of the day: every dish that is eaten has a number of its own, and no number
 * of theirs gives the day’s; told once for a nutrient, however often the day is said. Where something else may have
 * been eaten that day, only a day with less than its dishes cannot be.
 * @param complete whether nothing else was eaten, by the person’s word
 */
export function daySum(
  values: readonly SaidValue[],
  dishes: readonly DayDish[],
  complete: boolean,
  region: Region,
): Contradiction[] {
  const eaten = dishes.filter(({ eaten: share }) => share !== 0);
  if (eaten.length < 2) return [];
  const said = groupedBy(values, ({ segmentId, nutrient }) => `${segmentId} ${nutrient}`);
  const eatenAll = (nutrient: Nutrient) => {
    const all = eaten.map((dish) => eatenOf(dish, said.get(`${dish.segmentId} ${nutrient}`) ?? []));
    return all.every((part) => part !== null) ? all : null;
  };
  const days = groupedBy(
    values.filter(({ scope }) => scope === 'day'),
    ({ nutrient }) => nutrient,
  );
  return [...days].flatMap(([nutrient, all]) => {
    const known = eatenAll(nutrient);
    if (!known) return [];
    const sum = added(known.map(({ range }) => range));
    const allowed = complete ? sum : { ...sum, to: Infinity };
    const apart = all.filter(({ interval }) => areApart(allowed, interval));
    if (apart.length === 0) return [];
    const middle = known.reduce((total, { value }) => total + value, 0);
    const come = ofValue(middle, nutrient, region);
    const of = [...new Set(apart.map(({ text }) => text))].join(' or ');
    return [
      contradiction({
        kind: 'day',
        nutrient,
        segmentId: null,
        words: `the dishes come to ${come}, and the day is said to be ${of}`,
        sides: [
          { value: of, said: apart.map(({ row }) => row) },
          { value: come, said: known.flatMap(({ rows }) => rows) },
        ],
      }),
    ];
  });
}

interface Eaten {
  readonly range: Pick<SaidInterval, 'from' | 'to'>;
  readonly value: number;
  readonly rows: readonly SaidValue['row'][];
}

/**
 * What was eaten of a dish, by all that is said of it: so much of the whole, so many portions, the dish as it stands,
 * whole or a part. The range holds every one of them; null where nothing is said.
 */
function eatenOf(dish: DayDish, said: readonly SaidValue[]): Eaten | null {
  const of = said.flatMap((value) =>
    timesOf(value, dish).map((times) => ({
      row: value.row,
      value: ((value.low + value.high) / 2) * times,
      from: Math.max(0, value.interval.from) * times,
      to: value.interval.to * times,
    })),
  );
  const [first] = of;
  if (!first) return null;
  return {
    range: {
      from: of.reduce((least, { from }) => Math.min(least, from), Infinity),
      to: of.reduce((most, { to }) => Math.max(most, to), 0),
    },
    value: first.value,
    rows: [...new Set(of.map(({ row }) => row))],
  };
}

/** By what a value may have to be multiplied to be what was eaten; nothing where nobody knows. */
function timesOf({ scope }: SaidValue, { eaten, portions }: DayDish): readonly number[] {
  if (eaten === null) return [];
  if (scope === 'whole') return [eaten];
  if (scope === 'half') return [2 * eaten];
  if (scope === 'portion') return portions.map((count) => count * eaten);
  return scope === 'dish' ? [...new Set([1, eaten])] : [];
}

function added(ranges: readonly Pick<SaidInterval, 'from' | 'to'>[]): SaidInterval {
  const sum = (of: (range: Pick<SaidInterval, 'from' | 'to'>) => number) =>
    ranges.reduce((total, range) => total + of(range), 0);
  return {
    from: sum(({ from }) => from),
    to: sum(({ to }) => to),
    fromOpen: false,
    toOpen: false,
    oneSided: false,
  };
}
