import { Disclosure } from '../../../_ui/disclosure';
import type { Dish } from '#lib/episode/context';
import { emptyReadings, finishedReadings } from '#lib/figures/readings';
import { weighDish } from '../weigh-actions';
import { Readings } from './readings';
import type { EpisodeView } from './view';
import { scaleChoices } from './weighed-words';
import { WeighForm } from './weigh-form';
import { heldFor, scaleFor } from './weigh-view';
import { NoScale } from './weigh-line';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

/** The weight of the finished dish, from which portions in grams and 100 g come. */
export function FinishedWeight({ view, dish }: Props) {
  const { episode, kitchen } = view.file;
  const readings = finishedReadings(dish.recipe);
  return (
    <section aria-label={`Finished weight: ${dish.title}`}>
      <h3>Finished weight</h3>
      {readings.length === 0 && !dish.recipe.cooking && (
        <p className="mt-1 text-soft">
          Not weighed yet: portions in grams and 100 g of the dish are unknown until it is, or until
          its change of weight is taken from a table.
        </p>
      )}
      <Readings view={view} readings={readings} what={dish.title} lastCounts />
      <Readings
        view={view}
        readings={emptyReadings(dish.recipe)}
        what={`empty container of ${dish.title}`}
      />
      <Disclosure words="Weigh the finished dish">
        <p className="mb-3 text-soft">
          The last reading counts alone, all that is eaten of the dish in it.
        </p>
        {kitchen.scales.length === 0 ? (
          <NoScale />
        ) : (
          <WeighForm
            id={`weigh-dish-${dish.recipe.id}`}
            action={weighDish}
            hidden={{ episodeId: episode.id, recipeId: dish.recipe.id }}
            of="finished"
            scales={scaleChoices(kitchen)}
            scaleId={scaleFor(dish.recipe, kitchen)}
            held={heldFor(dish.recipe, null, kitchen)}
            submit="Keep the weight"
          />
        )}
      </Disclosure>
    </section>
  );
}
