import { amountContext, dishesOf } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { ProvisionalPart } from '#lib/figures/figure';
import { ingredientParts } from '#lib/figures/recipe-parts';
import { amountsDiffer } from '#lib/swap/apply-swap';

/**
 * What waits for the person's word in the ingredients that a swap changes, before or after it, at any depth. What waits
 * in an ingredient that is the same on both sides takes itself out of the difference.
 * @example unconfirmedParts(file, withFullFat, 'soup') // [{ why: 'match', text: 'a pot of yoghurt', … }]
 */
export function unconfirmedParts(
  before: EpisodeFile,
  after: EpisodeFile,
  segmentId: string,
): readonly ProvisionalPart[] {
  const [was, becomes] = [before, after].map(
    (file) => dishesOf(file.episode.segments).find(({ id }) => id === segmentId)?.recipe,
  );
  if (!was || !becomes) return [];
  const waiting = (file: EpisodeFile, own: Recipe, other: Recipe) =>
    own.lines
      .filter((line) => isChanged(line, own, other))
      .flatMap((line) => {
        const { region } = file.episode;
        return ingredientParts(line, own, amountContext(file), 'energyKcal', region).provisional;
      });
  const all = [...waiting(before, was, becomes), ...waiting(after, becomes, was)];
  const key = ({ why, lineId }: ProvisionalPart) => `${why} ${lineId}`;
  return [...new Map(all.map((part) => [key(part), part])).values()];
}

function isChanged(line: RecipeLine, own: Recipe, other: Recipe): boolean {
  const there = other.lines.find(({ id }) => id === line.id);
  if (!there || there.foodId !== line.foodId) return true;
  return amountsDiffer({ ...own, lines: [line] }, { ...other, lines: [there] });
}
