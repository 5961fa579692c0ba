import type { JudgeContext, JudgedDish } from './judge-context';
import { aMeaning, type About, type Meaning } from './meaning';

/** Equal parts of a dish that its portion may be one of: of a dish without portions, all of it. */
function partsOf({ dish }: JudgedDish): readonly number[] | null {
  const { portions } = dish.recipe;
  const counts = portions.flatMap((each) => (each.kind === 'count' ? [each.of] : []));
  if (portions.length === 0) return [1];
  return counts.length === 1 && portions.length === 1 ? counts : null;
}

/**
 * What several dishes come to together: one portion of each, and, where nothing says so, all of each as well.
 * @example togetherMeanings([stew, flan], { oneOfEach: true }, context)[0]?.called // 'one portion each of Stew and Flan'
 */
export function togetherMeanings(
  dishes: readonly JudgedDish[],
  { oneOfEach }: NonNullable<About['together']>,
  context: JudgeContext,
): readonly Meaning[] | string {
  if (dishes.length === 0) return 'of which dishes together, and of how much of each?';
  const several = dishes.find(({ dish }) => dish.batches.num !== dish.batches.den);
  if (several) return `${several.dish.title} is made several times: of how much of it?`;
  const titles = dishes.map(({ dish }) => dish.title);
  const names = `${titles.slice(0, -1).join(', ')} and ${titles.at(-1) ?? ''}`;
  const counts = dishes.map(partsOf);
  const unsure = dishes.find((_, index) => counts[index] === null);
  if (unsure) return `which portion of ${unsure.dish.title}?`;
  const sum = (called: string, of: (index: number) => number) => {
    const parts = dishes.map(({ dish }, index) => ({ segmentId: dish.id, of: of(index) }));
    const { day } = context.together(parts);
    return aMeaning(called, day, { kind: 'day' }, { published: null });
  };
  const portions = sum(`one portion each of ${names}`, (index) => counts[index]?.[0] ?? 1);
  const parted = counts.some((count) => (count?.[0] ?? 1) > 1);
  if (oneOfEach) return [portions];
  const all = sum(`all of ${names}`, () => 1);
  return parted ? [portions, all] : [all];
}
