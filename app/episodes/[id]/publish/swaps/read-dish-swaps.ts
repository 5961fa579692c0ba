import 'server-only';
import { amountContext, dishesOf } from '#lib/episode/context';
import { matchQuery } from '#lib/episode/match-line';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { swapView } from '#lib/publish/swap-view';
import { findFoods } from '#lib/store/reference-search';
import { proposedName, stepWords } from '#lib/swap/step-words';
import { triedLines } from '#lib/swap/tried-lines';
import { foodHit } from '../../../../foods/search/food-hit';
import type { FoodHit } from '../../../../foods/search/hit';
import type { DishSwaps } from './_components/view';
import { readSwaps } from './read-swaps';
import type { SwapPlace } from './steps-text';

/** Foods offered for an ingredient before anything is typed. */
const OFFERED = 6;

/** The page of a dish's swaps; null where the episode or the dish is gone. */
export async function readDishSwaps(
  episodeId: string,
  segmentId: string,
  { steps = [], variantId = null, line = null }: SwapPlace,
): Promise<DishSwaps | null> {
  const read = await readSwaps(episodeId, steps, segmentId);
  const dish = read && dishesOf(read.file.episode.segments).find(({ id }) => id === segmentId);
  if (!read || !dish) return null;
  const { file } = read;
  const variants = read.live.publish?.variants ?? [];
  const variant = variants.find((each) => each.id === variantId) ?? null;
  const context = amountContext(file);
  const name = variant?.name ?? proposedName(steps, dish.recipe, context);
  const told =
    steps.length === 0
      ? null
      : swapView(file, { id: 'tried', segmentId, name: name || 'this swap', steps: [...steps] });
  const view = told?.ok ? told.value : null;
  const open = dish.recipe.lines.find(({ id }) => id === line);
  return {
    ...{ file, dish, steps, variant, name, line, view },
    lock: read.lock,
    stepWords: steps.map((step) => stepWords(step, dish.recipe, context)),
    lines: triedLines(file, view?.after ?? file, segmentId),
    problems: told && !told.ok ? told.problems.map(({ message }) => message) : [],
    rev: read.revs[variant?.id ?? ''] ?? 0,
    offered: open ? await foodsNear(open) : [],
    saved: variants.filter((each) => each.segmentId === segmentId),
  };
}

/** Foods that an ingredient's words may mean, other than the one that it is. */
async function foodsNear({ text, foodId }: RecipeLine): Promise<readonly FoodHit[]> {
  const [part] = readIngredient(text);
  const words = part ? matchQuery(part) : '';
  const found = words === '' ? [] : await findFoods(words, { take: OFFERED });
  return found.filter(({ id }) => id !== foodId).map(foodHit);
}
