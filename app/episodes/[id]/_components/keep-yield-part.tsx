import { amountContext } from '#lib/episode/context';
import { cookWeights } from '#lib/episode/cook-weights';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { cookMethods } from '#lib/episode/yield-words';
import { KeepYieldForm } from './keep-yield-form';
import type { EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly recipe: Recipe;
  readonly line: RecipeLine;
}

/** With both weights of an ingredient known, one press keeps them as its food's history. */
export function KeepYieldPart({ view, recipe, line }: Props) {
  const { episode, foods } = view.file;
  const food = foods.find(({ id }) => id === line.foodId);
  const weights = cookWeights(line, recipe.weighings, amountContext(view.file));
  if (!food || !weights) return null;
  const kept = food.yields.find(({ own }) => own?.lineId === line.id);
  if (kept && kept.rawMg === weights.rawMg && kept.cookedMg === weights.cookedMg) {
    return <p>Kept as a cooked weight of {food.name}, for next time.</p>;
  }
  const methods = cookMethods(food);
  return (
    <KeepYieldForm
      ids={{ episodeId: episode.id, lineId: line.id }}
      foodName={food.name}
      methods={methods}
      method={line.cookMethod ?? kept?.method ?? ''}
    />
  );
}
