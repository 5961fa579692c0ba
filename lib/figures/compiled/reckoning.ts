import type { EpisodeFile } from '#lib/episode/schema';
import { dishIn } from '#lib/figures/compiled/compiled-lines';
import { dayFigures } from '#lib/figures/compiled/day-sum';
import { shareFigures } from '#lib/figures/compiled/dish-sum';
import type { CompiledLine } from '#lib/figures/compiled/line';
import { lineFigures } from '#lib/figures/compiled/line-figures';
import { memoryOf, type KeptDish, type Memory } from '#lib/figures/compiled/memory';
import { panelOf, type Panel } from '#lib/figures/compiled/panel';
import type { LineFigures } from '#lib/figures/episode-figures';
import type { DishReckoning, Reckoning, RowOf } from '#lib/figures/reckoning';
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
      return (kept.worked ??= work(reckoningOf(kept, memory)));
    },
    together: (parts) =>
      dayFigures(
        parts.map(({ dish, share }) => ({ dish: dishIn(file, dish, memory).sum, share })),
        memory,
      ),
  };
}

/**
 * A dish is kept for as long as it is in some episode, and so is all that its functions see. They are made here and
 * not where the file is seen: each kept dish would keep the episode that it was first in, with all dishes of that.
 */
function reckoningOf({ context, sum, lines }: KeptDish, memory: Memory): DishReckoning {
  return {
    context,
    part: (share) => shareFigures(sum, share, memory),
    lines: (row) => lines.map((each) => rowOf(each, row, memory.panel)),
  };
}

/** The row of an ingredient, put together once; it outlives the dish that it was first in. */
function rowOf(compiled: CompiledLine, row: RowOf, panel: Panel): LineFigures {
  compiled.row ??= row(compiled.line, compiled.eaten, () => lineFigures(compiled, panel));
  return compiled.row;
}
