import { recipesOf, usedFoodIds } from '#lib/episode/context';
import type { BlockContext } from '#lib/publish/description/block';
import { lines, type Section } from '#lib/publish/document/document';

/** Tables with their release, and labels by the name of what they are on. */
export function sourceSections({ publish: { file } }: BlockContext): readonly Section[] {
  const used = usedFoodIds(recipesOf(file));
  const foods = file.foods.filter((food) => used.has(food.id));
  const tables = new Set(
    foods
      .filter((food) => food.kind === 'reference')
      .map(({ version }) => `${version.source} ${version.release}`.trim()),
  );
  const labels = foods.filter((food) => food.kind === 'label').map((food) => food.name);
  const sources = [
    ...tables,
    ...(labels.length > 0 ? [`package labels (${labels.join(', ')})`] : []),
  ];
  return sources.length === 0 ? [] : [lines(`Sources of the figures: ${sources.join('; ')}.`)];
}
