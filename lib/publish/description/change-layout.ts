import {
  BLOCK_KINDS,
  DISH_PARTS,
  type BlockKind,
  type DescriptionLayout,
  type DishPart,
} from '#lib/episode/publish-schema';
import { houseLayout } from '#lib/publish/description/layout';

/** One thing that a person does to a layout. */
export type LayoutChange =
  | { readonly what: 'up' | 'down' | 'show' | 'hide'; readonly part: BlockKind | DishPart }
  | { readonly what: 'limit'; readonly limit: number };

/** What blocks and parts of a dish are called. */
export const PART_WORDS: Readonly<Record<BlockKind | DishPart, string>> = {
  title: 'Title',
  hook: 'Hook',
  chapters: 'Chapters',
  dishes: 'Dishes',
  day: 'The day’s total',
  notes: 'Notes to numbers',
  swaps: 'Swaps',
  allergens: 'Allergens',
  cautions: 'Cautions',
  disclosure: 'Disclosure',
  links: 'Links',
  corrections: 'Corrections',
  sources: 'Sources of the figures',
  whole: 'The whole dish',
  portions: 'Portions',
  per100g: 'Per 100 g',
  ingredients: 'Ingredients',
  method: 'Method',
  oven: 'Oven',
};

/**
 * A layout after one change of it; the same where there is nothing to change, as what stands first cannot go up.
 * A part of a dish that is put in stands where it stands by default among the others.
 */
export function changedLayout(from: DescriptionLayout, change: LayoutChange): DescriptionLayout {
  const layout = houseLayout(from);
  if (change.what === 'limit') return { ...layout, limit: change.limit };
  const { part, what } = change;
  const block = BLOCK_KINDS.find((kind) => kind === part);
  if (block) {
    if (what === 'show' || what === 'hide') {
      const blocks = layout.blocks.map((each) =>
        each.kind === block ? { ...each, shown: what === 'show' } : each,
      );
      return houseLayout({ ...layout, blocks });
    }
    const at = layout.blocks.findIndex(({ kind }) => kind === block);
    return { ...layout, blocks: moved(layout.blocks, at, what) };
  }
  const own = DISH_PARTS.find((each) => each === part);
  return own ? { ...layout, dish: changedDish(layout.dish, own, what) } : layout;
}

function changedDish(
  dish: readonly DishPart[],
  part: DishPart,
  what: 'up' | 'down' | 'show' | 'hide',
): DishPart[] {
  const at = dish.indexOf(part);
  if (what === 'hide') return dish.filter((each) => each !== part);
  if (what !== 'show') return at < 0 ? [...dish] : moved(dish, at, what);
  if (at >= 0) return [...dish];
  const place = DISH_PARTS.indexOf(part);
  const before = DISH_PARTS.slice(0, place).findLast((each) => dish.includes(each));
  return dish.toSpliced(before === undefined ? 0 : dish.indexOf(before) + 1, 0, part);
}

function moved<T>(all: readonly T[], at: number, what: 'up' | 'down'): T[] {
  const to = what === 'up' ? at - 1 : at + 1;
  const [one] = all.slice(at, at + 1);
  if (one === undefined || to < 0 || to >= all.length) return [...all];
  return all.toSpliced(at, 1).toSpliced(to, 0, one);
}
