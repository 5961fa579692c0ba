import Link from 'next/link';
import { ButtonForm } from '../../../_forms/button-form';
import { amountContext } from '#lib/episode/context';
import { nestedRecipe } from '#lib/episode/made-from';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { someOf } from '#lib/figures/print-figure';
import type { Waiting } from '#lib/overview/waiting-lines';
import { placeDish } from '../dish-line-actions';
import { editHref, rowHref, type EpisodeView } from './view';

interface Props {
  readonly view: Pick<EpisodeView, 'file' | 'dishes'>;
  readonly line: RecipeLine;
}

/** Of an ingredient that is a dish: which, with the way to it, and what it holds. */
export function MadeFrom({ view, line }: Props) {
  const nested = nestedRecipe(line, amountContext(view.file));
  if (!nested) return 'no food chosen';
  return (
    <>
      a dish: <DishLink view={view} recipe={nested} />, holds {heldWords(nested)}
    </>
  );
}

/** The way to a dish; its words alone where it stands in no episode. */
export function DishLink({
  view: { file, dishes },
  recipe,
}: Pick<Props, 'view'> & { readonly recipe: Recipe }) {
  const place = dishes?.places[recipe.id];
  if (!place) return recipe.title;
  const elsewhere = place.episodeId === file.episode.id ? '' : ` (${place.episodeTitle})`;
  return (
    <Link
      className="link inline-flex min-h-6 items-center"
      href={rowHref(place.episodeId, place.segmentId)}
    >
      {place.title}
      {elsewhere}
    </Link>
  );
}

function heldWords({ lines }: Recipe): string {
  return lines.length === 0 ? 'nothing yet' : someOf(lines.map(({ text }) => text));
}

/** What an ingredient that is a dish waits for, with every way out. */
export function DishGap({ view, line, waits }: Props & { readonly waits: Waiting }) {
  const nested = nestedRecipe(line, amountContext(view.file));
  if (!nested) return null;
  const { id } = view.file.episode;
  const title = view.dishes?.places[nested.id]?.title ?? nested.title;
  const edit = (words: string) => (
    <Link className="link inline-flex min-h-6 items-center" href={editHref(id, line.id)}>
      {words}
    </Link>
  );
  switch (waits) {
    case 'noDivisor':
      return (
        <>
          Nobody knows what {title} weighs when it is done: weigh it finished, or take its change of
          weight from a table (<Way view={view} recipe={nested} />
          ). Or {edit('give batches or portions of it')}.
        </>
      );
    case 'cycle':
      return <>It is made from itself: {edit('choose another dish')}.</>;
    case 'within':
      return (
        <>
          Something in it is open or waits for your word (<Way view={view} recipe={nested} />
          ).
        </>
      );
    case 'leftBehind':
      return <>More of it is left behind than there was: {edit('look at it again')}.</>;
    case 'noGrams':
      return <>{edit('Say how much of it')}: grams, batches or portions.</>;
    case 'confirm':
    case 'noFood':
    case 'states':
      // Of foods alone.
      return null;
  }
}

/** The way to a dish that has to be mended; one that stands in no episode is put into this one first. */
function Way({ view, recipe }: Pick<Props, 'view'> & { readonly recipe: Recipe }) {
  if (view.dishes?.places[recipe.id]) return <DishLink view={view} recipe={recipe} />;
  return (
    <ButtonForm
      action={placeDish}
      values={{ episodeId: view.file.episode.id, recipeId: recipe.id }}
      label={`Add it to this episode: ${recipe.title}`}
    >
      add it to this episode
    </ButtonForm>
  );
}
