import type { EpisodeFile } from '#lib/episode/schema';
import { dishIn } from '#lib/figures/compiled/compiled-lines';
import { dayFigures } from '#lib/figures/compiled/day-sum';
import { shareFigures } from '#lib/figures/compiled/dish-sum';
import { lineFigures } from '#lib/figures/compiled/line-figures';
import { memoryOf } from '#lib/figures/compiled/memory';
import { panelOf } from '#lib/figures/compiled/panel';
import type { DishReckoning, Reckoning } from '#lib/figures/reckoning';
import type { Nutrient } from '#lib/foods/nutrients';

/**
 * Works figures out of what was compiled: each ingredient once for all nutrients, dishes and the day by loops over
 * these, whatever has not changed as it was. The same figures as by terms, but for rounding in the last digits.
 */
export function compiled(file: EpisodeFile, nutrients: readonly Nutrient[]): Reckoning {
  const memory = memoryOf(file, panelOf(file.episode.region, nutrients));
  return {
    dish: (dish, work) => {
      const kept = dishIn(file, dish, memory);
      if (kept.worked) return kept.worked;
      const of: DishReckoning = {
        context: kept.context,
        part: (share) => shareFigures(kept.sum, share, memory),
        lines: (row) =>
          kept.lines.map(
            (each) =>
              (each.row ??= row(each.line, each.eaten, () => lineFigures(each, memory.panel))),
          ),
      };
      kept.worked = work(of);
      return kept.worked;
    },
    together: (parts) =>
      dayFigures(
        parts.map(({ dish, share }) => ({ dish: dishIn(file, dish, memory).sum, share })),
        memory,
      ),
  };
}
