import { ButtonForm } from '../../../_forms/button-form';
import { Disclosure } from '../../../_ui/disclosure';
import type { Dish } from '#lib/episode/context';
import { portionSum } from '#lib/episode/portion-sum';
import type { DishFigures } from '#lib/figures/episode-figures';
import { removePortion } from '../portion-actions';
import { PortionForm } from './portion-form';
import { kitchenSpread, portionWords, sumWords } from './portion-words';
import { revOf, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly figures: DishFigures | undefined;
}

/** The portions of a dish, what they come to together, and the form for one more. */
export function Portions({ view, dish, figures }: Props) {
  const episodeId = view.file.episode.id;
  const { portions } = dish.recipe;
  const sum = portionSum(portions, figures?.finishedMg?.value ?? null);
  return (
    <section aria-label={`Portions: ${dish.title}`}>
      <h3>Portions</h3>
      <ul className="mt-1">
        {portions.map((portion) => (
          <li
            key={portion.id}
            className="flex items-center justify-between gap-4 border-b border-line py-1"
          >
            <span>
              {portion.name} <span className="text-soft">{portionWords(portion)}</span>
            </span>
            <ButtonForm
              action={removePortion}
              values={{ episodeId, portionId: portion.id, rev: revOf(view, portion.id) }}
              label={`Take out the portion: ${portion.name}`}
            >
              Take out
            </ButtonForm>
          </li>
        ))}
      </ul>
      {sumWords(sum).map((words) => (
        <p key={words} className="mt-1 text-fine text-soft">
          {words}
        </p>
      ))}
      <Disclosure words="Add a portion">
        <PortionForm
          episodeId={episodeId}
          recipeId={dish.recipe.id}
          {...kitchenSpread(view.file.kitchen)}
        />
      </Disclosure>
    </section>
  );
}
