import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { isNutrient } from '#lib/foods/nutrients';
import type { Problem } from '#lib/result';
import { nutrientLabel } from '#lib/swap/amount-words';
import { FIELD } from './field-names';

const ENDS = {
  [FIELD.atLeast]: 'at least',
  [FIELD.atMost]: 'at most',
  [FIELD.low]: 'from',
  [FIELD.high]: 'to',
  [FIELD.step]: 'in steps of',
} as const;

/**
 * Faults of a fit's form with the ingredient or the nutrient that each is of: fields are called alike in every row.
 * @example namedFaults(file, 'soup', [{ path: 'low-x', message: 'Write grams …', … }]) // '200 g curd, from: Write grams …'
 */
export function namedFaults(
  { episode }: EpisodeFile,
  segmentId: string,
  problems: readonly Problem[],
): readonly Problem[] {
  const dish = dishesOf(episode.segments).find(({ id }) => id === segmentId);
  const nameOf = (row: string) =>
    isNutrient(row)
      ? nutrientLabel(row, episode.region)
      : dish?.recipe.lines.find(({ id }) => id === row)?.text;
  return problems.map((problem) => {
    const [prefix, end] =
      Object.entries(ENDS).find(([each]) => problem.path.startsWith(each)) ?? [];
    const name = prefix && nameOf(problem.path.slice(prefix.length));
    return name && end ? { ...problem, message: `${name}, ${end}: ${problem.message}` } : problem;
  });
}
