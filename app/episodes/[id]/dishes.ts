import 'server-only';
import { recipesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { readDishChoices, readDishPlaces, type DishPlace } from '#lib/store/read-dishes';
import { dishHit, type DishHit } from './dish-hit';

/** What the episode page shows of dishes that are made from others. */
export interface DishesView {
  /** Where each stands, by its recipe's id; none for one that came with a file and is no dish of any episode. */
  readonly places: Readonly<Record<string, DishPlace>>;
  /** The latest of all episodes, to be taken before anything was looked for. */
  readonly latest: readonly DishHit[];
}

export async function dishesView(file: EpisodeFile): Promise<DishesView> {
  const named = recipesOf(file).flatMap(({ lines }) =>
    lines.flatMap(({ madeFrom }) => madeFrom?.recipeId ?? []),
  );
  const latest = await readDishChoices();
  return { places: await readDishPlaces(named), latest: latest.map(dishHit) };
}
