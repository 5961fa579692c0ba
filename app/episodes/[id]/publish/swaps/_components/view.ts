import type { Dish } from '#lib/episode/context';
import type { SwapStep, Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { LockTold } from '#lib/publish/lock-words';
import type { SwapView } from '#lib/publish/swap-view';
import type { TriedLine } from '#lib/swap/tried-lines';
import type { FoodHit } from '../../../../../foods/search/hit';

/** What the page of a dish's swaps draws from. */
export interface DishSwaps {
  readonly file: EpisodeFile;
  readonly dish: Dish;
  readonly lock: LockTold;
  readonly steps: readonly SwapStep[];
  readonly stepWords: readonly string[];
  readonly lines: readonly TriedLine[];
  /** What the steps do; null while nothing is tried. */
  readonly view: SwapView | null;
  readonly problems: readonly string[];
  /** The saved swap that is being changed. */
  readonly variant: Variant | null;
  readonly name: string;
  readonly rev: number;
  /** Whose ways stand open. */
  readonly line: string | null;
  /** Foods near the open ingredient's. */
  readonly offered: readonly FoodHit[];
  readonly saved: readonly Variant[];
}
