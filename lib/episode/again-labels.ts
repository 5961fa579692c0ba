import { dishesOf, usedFoodIds } from '#lib/episode/context';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Food, FoodVersion } from '#lib/foods/food';
import { stableJson } from '#lib/episode/stable-json';
import { printDay } from '#lib/units/print-date';

/** What the foods were when the original was made, as far as that is known. */
export interface FoodsThen {
  /** The versions that its numbers were locked with, by the food's id. */
  readonly versions: ReadonlyMap<string, FoodVersion>;
  /** The last local date of the original: of its last reading, filming or publishing; null for none. */
  readonly date: string | null;
}

export interface FoodChange {
  readonly foodId: string;
  /** As in "skyr: the label was read again on Mon 4 May 2026 and says something else". */
  readonly message: string;
}

/**
 * Foods of a copy whose composition is another than the original rested on, or may be: the copy takes the
 * newest. A label read again with the same values says so. Where the numbers were never locked, a label
 * counts as read again if that was after the original's last date.
 */
export function foodChanges(foods: readonly Food[], then: FoodsThen): readonly FoodChange[] {
  return foods.flatMap((food) => {
    const { version } = food;
    const before = then.versions.get(food.id);
    const readOn = version.dateRead === null ? '' : ` on ${dayWithYear(version.dateRead)}`;
    const change = (words: string) => [{ foodId: food.id, message: `${food.name}: ${words}` }];
    if (before) {
      if (before.id === version.id) return [];
      const says = sameValues(before, version) ? 'says the same' : 'says something else';
      return food.kind === 'label'
        ? change(`the label was read again${readOn} and ${says}`)
        : change(`its values come from ${[version.source, version.release].join(' ').trim()} now`);
    }
    const isLater =
      food.kind === 'label' &&
      version.dateRead !== null &&
      then.date !== null &&
      version.dateRead > then.date;
    return isLater ? change(`the label was read again${readOn}`) : [];
  });
}

/** The foods that segments use, in the order of the file. */
export function foodsOf(file: EpisodeFile, segments: readonly Segment[]): readonly Food[] {
  const used = usedFoodIds(dishesOf(segments).map(({ recipe }) => recipe));
  return file.foods.filter(({ id }) => used.has(id));
}

/** Days after which a label is asked for again with a copy: common practice, no source. */
export const LABEL_GOOD_FOR_DAYS = 30;

/**
 * Label foods of a copied dish that should be asked about: those whose label was last read more than
 * 30 days before the copy was made, or at a date that nobody knows. A reading since then answers it for this
 * copy for good, and one of last week need not be asked about at all.
 * @param copiedOn local date of the copy, `YYYY-MM-DD`
 */
export function labelsToAsk(foods: readonly Food[], copiedOn: string): readonly Food[] {
  const since = Date.parse(copiedOn) - LABEL_GOOD_FOR_DAYS * 86_400_000;
  return foods.filter(({ kind, version: { dateRead } }) => {
    if (kind !== 'label') return false;
    return dateRead === null || Date.parse(dateRead) < since;
  });
}

/** `dayWithYear('2026-05-04')` → `'Mon 4 May 2026'`. */
export function dayWithYear(date: string): string {
  return `${printDay(date)} ${date.slice(0, 4)}`;
}

function sameValues(a: FoodVersion, b: FoodVersion): boolean {
  return stated(a) === stated(b);
}

/** What a label or table row says, whenever it was read. */
function stated({ basis, serving, values, secondColumn, carbBasis, state, rule }: FoodVersion) {
  return stableJson({ basis, serving, values, secondColumn, carbBasis, state, rule });
}
