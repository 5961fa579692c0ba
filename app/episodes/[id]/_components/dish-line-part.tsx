import { ButtonForm } from '../../../_forms/button-form';
import { Disclosure } from '../../../_ui/disclosure';
import { recipesOf, type Dish } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { quantityText } from '#lib/units/read-quantity';
import type { DishHit } from '../dish-hit';
import { addFromDish, countAsFood, saveFromDish } from '../dish-line-actions';
import { dishUnitText } from '../dish-units';
import { DishLineForm, type DishLineTexts } from './dish-line-form';
import { revOf, rowHref, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

const EMPTY: DishLineTexts = {
  text: '',
  madeFromId: '',
  quantity: '',
  unit: 'g',
  note: '',
  spoiltByTake: false,
};

/** The form of a new ingredient that is itself a dish. */
export function AddFromDish({ view, dish }: Props) {
  const { id } = dish.recipe;
  return (
    <Disclosure words="Add from a dish">
      <p className="mb-3 text-soft">
        For what was cooked before, as a sauce: the numbers of that dish are counted in, with their
        ranges.
      </p>
      <DishLineForm
        id={`new-from-dish-${id}`}
        episodeId={view.file.episode.id}
        action={addFromDish}
        hidden={{ recipeId: id }}
        line={EMPTY}
        dishes={choices(view, dish, null)}
        submit="Add it from the dish"
      />
    </Disclosure>
  );
}

/** The form of an ingredient that is a dish, or that is to be one. */
export function EditFromDish({ view, dish, line }: Props & { readonly line: RecipeLine }) {
  const episodeId = view.file.episode.id;
  const hidden = { lineId: line.id, rev: revOf(view, line.id) };
  return (
    <>
      <DishLineForm
        id={`from-dish-${line.id}`}
        episodeId={episodeId}
        action={saveFromDish}
        hidden={hidden}
        line={textsOf(line)}
        dishes={choices(view, dish, line)}
        submit="Save"
        cancelHref={rowHref(episodeId, line.id)}
      />
      {line.madeFrom && (
        <div className="mt-3">
          <ButtonForm
            action={countAsFood}
            values={{ episodeId, ...hidden }}
            label={`Choose a food instead: ${line.text}`}
          >
            Choose a food instead
          </ButtonForm>
        </div>
      )}
    </>
  );
}

function textsOf(line: RecipeLine): DishLineTexts {
  const { text, madeFrom, quantity, note, spoiltByTake } = line;
  // Of an ingredient that was of a food, cups and pieces mean nothing here.
  const fits = madeFrom !== null || ['g', 'kg', 'oz', 'lb'].includes(line.unit ?? '');
  return {
    text,
    madeFromId: madeFrom?.recipeId ?? '',
    quantity: quantity && fits ? quantityText(quantity) : '',
    unit: fits ? dishUnitText(line) : 'g',
    note,
    spoiltByTake,
  };
}

/** The latest dishes, but this one: nothing is made from itself. The one that is chosen stands first. */
function choices({ file, dishes }: EpisodeView, dish: Dish, line: RecipeLine | null): DishHit[] {
  const latest = (dishes?.latest ?? []).filter(({ recipeId }) => recipeId !== dish.recipe.id);
  const chosen = recipesOf(file).find(({ id }) => id === line?.madeFrom?.recipeId);
  if (!chosen) return latest;
  const place = dishes?.places[chosen.id];
  const portions = chosen.portions.map(({ name }) => name);
  const own: DishHit = {
    recipeId: chosen.id,
    title: place?.title ?? chosen.title,
    note: place?.episodeTitle ?? 'came with a file',
    portions,
  };
  return [own, ...latest.filter(({ recipeId }) => recipeId !== chosen.id)];
}
