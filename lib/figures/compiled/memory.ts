import { amountContext, type AmountContext, type Dish } from '#lib/episode/context';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Pack } from '#lib/episode/stock-schema';
import type { Food } from '#lib/foods/food';
import type { Arrangement, Together } from '#lib/figures/compiled/arrangement';
import type { WorkedDish } from '#lib/figures/reckoning';
import type { CompiledLine } from '#lib/figures/compiled/line';
import type { DishSum } from '#lib/figures/compiled/dish-sum';
import type { KeptLists } from '#lib/figures/compiled/lists';
import type { Panel } from '#lib/figures/compiled/panel';
import type { Packed } from '#lib/figures/compiled/packing';

/** How a sum is arranged, with the sources of each nutrient. */
export interface Arranged<A> {
  /** What was to be asked by terms, by nutrient. */
  readonly asked: Uint8Array | null;
  readonly arrangement: A;
  readonly sources: () => readonly (readonly string[])[];
}

/** The arrangement of a sum, with the entries that last had it: of the next, most are the very same objects. */
export interface KeptArrangement extends Arranged<Arrangement> {
  packed: Packed;
}

/**
 * What was worked out of an episode's foods, packs and kitchen for one panel. It is kept by these very objects and
 * goes with them: plain data is never changed, only replaced, so an ingredient that is the same object in the same
 * readings has the same figures, and one of another kitchen is never found here.
 */
export interface Memory {
  readonly panel: Panel;
  /** Without recipes: an ingredient that needs none is compiled without seeing any. */
  readonly context: AmountContext;
  /** By id, the last of an ingredient and of a dish; taken again only for the very same object. */
  readonly lines: Map<string, KeptLine>;
  readonly dishes: Map<string, KeptDish>;
  /** By recipe: the context with the recipes that it is made from, the same as long as these are. */
  readonly contexts: Map<string, AmountContext>;
  /** By the name of a sum: the last arrangement, taken again only after it was compared. */
  readonly arranged: Map<string, KeptArrangement>;
  together: Arranged<Together> | null;
  readonly lists: Map<string, KeptLists>;
}

export interface KeptLine {
  readonly recipeId: string;
  readonly weighings: readonly Weighing[];
  readonly context: AmountContext;
  readonly compiled: CompiledLine;
}

export interface KeptDish {
  readonly dish: Dish;
  readonly context: AmountContext;
  readonly lines: readonly CompiledLine[];
  readonly sum: DishSum;
  worked: WorkedDish | null;
}

const memories = new WeakMap<
  readonly Food[],
  WeakMap<readonly Pack[], WeakMap<Kitchen, WeakMap<Panel, Memory>>>
>();

/** The memory of a file's foods, packs and kitchen for a panel. */
export function memoryOf(file: EpisodeFile, panel: Panel): Memory {
  const byPacks = inside(memories, file.foods, () => new WeakMap());
  const byKitchen = inside(byPacks, file.packs, () => new WeakMap());
  const byPanel = inside(byKitchen, file.kitchen, () => new WeakMap());
  return inside(byPanel, panel, () => ({
    panel,
    context: { ...amountContext(file), recipes: new Map() },
    lines: new Map(),
    dishes: new Map(),
    lists: new Map(),
    contexts: new Map(),
    arranged: new Map(),
    together: null,
  }));
}

function inside<K extends object, V>(all: WeakMap<K, V>, key: K, make: () => V): V {
  const known = all.get(key);
  if (known !== undefined) return known;
  const made = make();
  all.set(key, made);
  return made;
}
