import { ButtonForm } from '../../../_forms/button-form';
import { Disclosure } from '../../../_ui/disclosure';
import { amountContext, type Dish } from '#lib/episode/context';
import { finishedWeight, type FinishedWeight } from '#lib/episode/finished-weight';
import type { Cooking } from '#lib/episode/recipe-schema';
import { COOKING_SPREAD_PERMILLE } from '#lib/episode/spreads';
import { printGrams } from '#lib/units/print';
import { permilleTyped } from '#lib/units/read-typed';
import { removeCooking } from '../cooking-actions';
import { CookingForm } from './cooking-form';
import { revOf, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

/**
 * What cooking does to the weight of a dish, for where nobody weighed it finished. A weight that was read off a scale
 * wins, and the page says which of the two is used.
 */
export function DishCooking({ view, dish }: Props) {
  const { recipe } = dish;
  const { cooking } = recipe;
  const finished = finishedWeight(recipe, amountContext(view.file));
  const values = {
    episodeId: view.file.episode.id,
    recipeId: recipe.id,
    rev: revOf(view, recipe.id),
  };
  return (
    <section aria-label={`Change of weight in cooking: ${dish.title}`}>
      {cooking && (
        <>
          <p>
            {changeWords(cooking)}
            <span className="block text-fine text-soft">{cooking.source}</span>
          </p>
          <p className="mt-1">{usedWords(finished, cooking)}</p>
        </>
      )}
      <Disclosure
        words={
          cooking
            ? 'Change what cooking does to its weight'
            : 'Change of weight in cooking, from a table'
        }
      >
        <p className="mb-3 text-soft">
          It gives 100 g of the dish and portions in grams until the finished dish is weighed. Fat
          that runs out or is taken up counts in its numbers either way.
        </p>
        <CookingForm {...values} texts={cookingTexts(cooking)} />
        {cooking && (
          <div className="mt-3">
            <ButtonForm
              action={removeCooking}
              values={values}
              tone="hand"
              label={`Take out the change of weight: ${dish.title}`}
            >
              Take out the change of weight
            </ButtonForm>
          </div>
        )}
      </Disclosure>
    </section>
  );
}

function changeWords({ moisturePermille, fatPermille, spreadPermille }: Cooking): string {
  const fat = fatPermille === 0 ? '' : `, fat ${signed(fatPermille)} %`;
  const spread = permilleTyped(spreadPermille);
  return `In cooking: water ${signed(moisturePermille)} %${fat} of the raw weight, ± ${spread} points`;
}

function signed(permille: number): string {
  const sign = permille < 0 ? '−' : permille > 0 ? '+' : '';
  return `${sign}${permilleTyped(Math.abs(permille))}`;
}

/** Which of the two weights counts. */
function usedWords(finished: FinishedWeight | null, { fatPermille }: Cooking): string {
  if (!finished) return 'Not used yet: it needs the grams of every ingredient.';
  if (finished.basis === 'weighed') {
    const fat = fatPermille === 0 ? '' : ' Its fat is counted as said here.';
    return `Its weight is not used: the finished dish was weighed.${fat}`;
  }
  const { low, value, high } = finished.interval;
  return `Used, as long as nobody weighs it: ${printGrams(value)} g finished, ${printGrams(low)}–${printGrams(high)} g.`;
}

function cookingTexts(cooking: Cooking | null) {
  return {
    moisture: cooking ? permilleTyped(cooking.moisturePermille) : '',
    fat: cooking && cooking.fatPermille !== 0 ? permilleTyped(cooking.fatPermille) : '',
    spread: permilleTyped(cooking?.spreadPermille ?? COOKING_SPREAD_PERMILLE),
    source: cooking?.source ?? '',
  };
}
