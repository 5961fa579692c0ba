import type { Contradiction, PlacedStatement } from '#lib/claims/contradict/contradiction';
import { daySum, type DayDish } from '#lib/claims/contradict/day-sum';
import { energyOfMacros } from '#lib/claims/contradict/energy-of-macros';
import { halves, parts, type SaidCount } from '#lib/claims/contradict/parts';
import { isTitle, saidValues, thingsOf } from '#lib/claims/contradict/said-values';
import { prices } from '#lib/claims/contradict/prices';
import { titleValues } from '#lib/claims/contradict/titles';
import { twoCounts } from '#lib/claims/contradict/two-counts';
import { twoValues } from '#lib/claims/contradict/two-values';
import { dishesOf } from '#lib/episode/context';
import type { Episode, Segment } from '#lib/episode/schema';

/**
 * Statements that cannot all hold, found without any figure: two values for one thing, a half that is not half, one of
 * so many that does not come to the whole, dishes that do not come to the day, macros that do not come to the calories,
 * a title that nothing in the video comes to. Each number counts for all that its words allow, so that no rounding and
 * no hedge ever makes one.
 * @param rows what is said, mends put in; of the same text in its order
 * @param textOf the text in which offsets count, by its id; without it no sums of prices are looked for
 * @example contradictions(readEdit(file, facts).judged, file.episode)[0]?.words // 'half of 640 calories is 320 calories, not 400 calories'
 */
export function contradictions(
  rows: readonly PlacedStatement[],
  episode: Pick<Episode, 'segments' | 'region' | 'anythingElse'>,
  textOf: (textId: string) => string = () => '',
): Contradiction[] {
  const { region, segments, anythingElse } = episode;
  const values = saidValues(rows, region);
  const counts = saidCounts(rows, segments);
  const byThing = new Map<string, Set<number>>();
  for (const { thing, low, high } of counts) {
    const known = byThing.get(thing) ?? new Set();
    byThing.set(thing, known.add(low).add(high));
  }
  const partsOf = (segmentId: string) => [...(byThing.get(segmentId) ?? [])];
  const spoken = values.filter(({ row }) => !isTitle(row));
  return [
    ...twoValues(values, partsOf),
    ...titleValues(values),
    ...halves(spoken, region),
    ...parts(spoken, counts, region),
    ...daySum(spoken, dayDishes(segments, partsOf), anythingElse?.kind === 'nothing', region),
    ...energyOfMacros(spoken, region),
    ...twoCounts(rows),
    ...prices(
      rows,
      (segmentId) => [...partsOf(segmentId), ...ownCounts(segments, segmentId)],
      textOf,
    ),
  ];
}

/** How many parts are said of a dish; where nothing is said of it, how many equal ones it has. */
function saidCounts(rows: readonly PlacedStatement[], segments: readonly Segment[]): SaidCount[] {
  const things = thingsOf(rows);
  const said = rows.flatMap(({ id, statement }): SaidCount[] => {
    if (statement.kind !== 'portions' || statement.unsure) return [];
    const { low, high, unit, hedge } = statement;
    if (hedge !== 'none' && hedge !== 'between') return [];
    return [{ thing: things.get(id) ?? '', as: unit, low, high }];
  });
  const known = new Set(said.map(({ thing }) => thing));
  const own = dishesOf(segments)
    .filter(({ id }) => !known.has(id))
    .flatMap(({ id, recipe }) =>
      recipe.portions.flatMap((portion): SaidCount[] =>
        portion.kind === 'count' && portion.of > 1
          ? [{ thing: id, as: 'portion', low: portion.of, high: portion.of }]
          : [],
      ),
    );
  // What is said again is the same.
  const keyed = [...said, ...own].map((count) => [Object.values(count).join(' '), count] as const);
  return [...new Map(keyed).values()];
}

/** Into how many equal parts a dish is cut by its own portions. */
function ownCounts(segments: readonly Segment[], segmentId: string): number[] {
  const recipe = segments.find(({ id }) => id === segmentId)?.recipe;
  return (recipe?.portions ?? []).flatMap((each) => (each.kind === 'count' ? [each.of] : []));
}

function dayDishes(
  segments: readonly Segment[],
  partsOf: (segmentId: string) => readonly number[],
): DayDish[] {
  return dishesOf(segments).map(({ id, eaten, ate, batches }) => ({
    segmentId: id,
    portions: partsOf(id),
    eaten: ate.kind === 'share' && batches.num === batches.den ? eaten.num / eaten.den : null,
  }));
}
