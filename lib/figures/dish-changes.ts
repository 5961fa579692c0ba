import type { Nutrient } from '#lib/foods/nutrients';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type Figures } from '#lib/figures/episode-figures';
import type { Figure, MissingPart } from '#lib/figures/figure';
import { missingText, printFigure } from '#lib/figures/print-figure';

/** One number of a dish before a change and after it, as printed. */
export interface NumberChange {
  readonly nutrient: Nutrient;
  readonly label: string;
  readonly unit: string;
  readonly before: string;
  readonly after: string;
}

/** A dish that comes out otherwise, with the numbers that do. */
export interface DishChange {
  readonly segmentId: string;
  readonly title: string;
  /** Numbers of the whole dish; where the digits shown stay, their ranges. */
  readonly numbers: readonly NumberChange[];
  /** What is missing after it and was not before: `'no grams for 3 teaspoons mustard'`; null where nothing is. */
  readonly lacks: string | null;
}

/**
 * The dishes of an episode whose numbers a change moves, in viewing order; those that come out alike are left out.
 * @param before the episode as it is
 * @param after the same episode with the change in it
 * @example dishChanges(file, file) // []
 */
export function dishChanges(before: EpisodeFile, after: EpisodeFile): readonly DishChange[] {
  const was = episodeFigures(before);
  const becomes = new Map(
    episodeFigures(after, was.nutrients).dishes.map((dish) => [dish.segmentId, dish]),
  );
  return was.dishes.flatMap(({ segmentId, title, whole }) => {
    const other = becomes.get(segmentId)?.whole;
    const numbers = was.nutrients.flatMap((nutrient) => {
      const [old, fresh] = [whole[nutrient], other?.[nutrient]];
      return old && fresh && !alike(old, fresh) ? [change(nutrient, old, fresh)] : [];
    });
    if (numbers.length === 0) return [];
    return [{ segmentId, title, numbers, lacks: lacking(whole, other ?? {}) }];
  });
}

function lacking(old: Figures, fresh: Figures): string | null {
  const key = ({ lineId, reason }: MissingPart) => `${lineId} ${reason}`;
  const parts = (of: Figures) => Object.values(of).flatMap(({ missing }) => missing);
  const before = new Set(parts(old).map(key));
  const added = parts(fresh).filter((part) => !before.has(key(part)));
  return added.length === 0 ? null : missingText(added);
}

/** Sums in another order differ in their last bits; a printed digit is far above (common practice, no source). */
const SAME = 1e-9;

function alike(a: Figure, b: Figure): boolean {
  const close = (x: number | null, y: number | null) =>
    x === null || y === null
      ? x === y
      : Math.abs(x - y) <= SAME * Math.max(1, Math.abs(x), Math.abs(y));
  return (
    close(a.value, b.value) &&
    close(a.low, b.low) &&
    close(a.high, b.high) &&
    close(a.likelyLow, b.likelyLow) &&
    close(a.likelyHigh, b.likelyHigh)
  );
}

function change(nutrient: Nutrient, old: Figure, fresh: Figure): NumberChange {
  const [before, after] = [printFigure(old), printFigure(fresh)];
  const { label, unit } = before;
  const shown = before.text === after.text;
  return {
    nutrient,
    label,
    unit,
    before: shown ? `${before.text} (${before.range})` : before.text,
    after: shown ? `${after.text} (${after.range})` : after.text,
  };
}
