import Link from 'next/link';
import { ButtonForm } from '../../../_forms/button-form';
import { Disclosure } from '../../../_ui/disclosure';
import { EmptyState } from '../../../_ui/empty-state';
import type { Dish } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import { addLine, moveLine, removeLine, saveLine } from '../actions';
import { fitHref } from '../fit/fit-text';
import { dishSwapsHref } from '../publish/swaps/steps-text';
import { AgainPart } from './again-part';
import { DishCooking } from './dish-cooking';
import { LineGaps } from './bound-offers';
import { DishFigures } from './dish-figures';
import { DishRemarks } from './dish-remarks';
import { AddFromDish, EditFromDish } from './dish-line-part';
import { EditLink } from './edit-link';
import { FinishedWeight } from './finished-weight';
import { IngredientTable } from './ingredient-table';
import { lineAbout } from './line-about';
import { LineForm } from './line-form';
import {
  EMPTY_LINE,
  lineTexts,
  NEW_STATE_CHOICES,
  NEW_UNIT_CHOICES,
  STATE_CHOICES,
  unitChoices,
} from './line-texts';
import { MatchPart } from './match-part';
import { OpenedHere } from './opened-here';
import { PasteForm } from './paste-form';
import { Portions } from './portions';
import { SegmentHead } from './segment-head';
import { TalkingPoints } from './talking-points';
import { dishHref, dishKey, revOf, rowHref, weighedIn, type EpisodeView } from './view';
import { WeighLine } from './weigh-line';
import { WhatIAte } from './what-i-ate';

interface Props {
  readonly view: EpisodeView;
  readonly segment: Segment;
}

/** One segment of the running order: what is said, and for a dish its numbers and ingredients. */
export function SegmentSection({ view, segment }: Props) {
  return (
    <section
      id={`row-${segment.id}`}
      aria-labelledby={`title-${segment.id}`}
      className="mt-14 border-t-[1.5px] border-ink pt-4 first-of-type:mt-0"
    >
      <SegmentHead view={view} segment={segment} />
      <AgainPart episodeId={view.file.episode.id} segmentId={segment.id} again={view.again} />
      {segment.recipe === null ? (
        <div className="max-w-3xl">
          <TalkingPoints view={view} segment={segment} />
        </div>
      ) : (
        <DishParts view={view} dish={{ ...segment, recipe: segment.recipe }} />
      )}
    </section>
  );
}

function DishParts({ view, dish }: { readonly view: EpisodeView; readonly dish: Dish }) {
  const figures = view.figures.dishes.find((each) => each.segmentId === dish.id);
  const empty = dish.recipe.lines.length === 0;
  const paste = view.paste?.segmentId === dish.id ? view.paste.words : undefined;
  return (
    <div className="grid gap-x-12 gap-y-9 lg:grid-cols-[minmax(0,1.9fr)_minmax(0,1fr)]">
      <div className="min-w-0">
        {figures && !empty && <DishFigures view={view} dish={figures} />}
        {figures && <MatchPart view={view} dish={dish} figures={figures} />}
        {figures && !empty && <DishRemarks view={view} dish={dish} />}
        <div className="mt-8">
          {figures && !empty ? (
            <IngredientTable
              view={view}
              dish={dish}
              figures={figures}
              form={<OpenLine view={view} dish={dish} />}
            />
          ) : (
            <EmptyState title="No ingredients yet">
              Paste them from your note, and the numbers are there.
            </EmptyState>
          )}
          <Disclosure words="Paste ingredients" open={empty || paste !== undefined}>
            <PasteForm
              key={paste ?? ''}
              episodeId={view.file.episode.id}
              recipeId={dish.recipe.id}
              initial={paste}
            />
          </Disclosure>
          <Disclosure words="Add one ingredient">
            <div className="border-b border-line pb-5">
              <LineForm
                id={`new-line-${dish.recipe.id}`}
                action={addLine}
                hidden={{ episodeId: view.file.episode.id, recipeId: dish.recipe.id }}
                line={EMPTY_LINE}
                units={NEW_UNIT_CHOICES}
                states={NEW_STATE_CHOICES}
                submit="Add the ingredient"
              />
            </div>
          </Disclosure>
          <AddFromDish view={view} dish={dish} />
        </div>
      </div>
      <div className="grid min-w-0 content-start gap-8">
        <TalkingPoints view={view} segment={dish} />
        <Portions view={view} dish={dish} figures={figures} />
        <WhatIAte view={view} dish={dish} figures={figures} />
        <div>
          <FinishedWeight view={view} dish={dish} />
          <DishCooking view={view} dish={dish} />
        </div>
        {!empty && <WaysOn episodeId={view.file.episode.id} dish={dish} />}
      </div>
    </div>
  );
}

/** Where a dish with numbers leads on: what else it could be. */
function WaysOn({ episodeId, dish }: { readonly episodeId: string; readonly dish: Dish }) {
  const link = 'link inline-flex min-h-8 items-center';
  return (
    <p className="flex flex-wrap gap-x-5 print:hidden">
      <Link className={link} href={dishSwapsHref(episodeId, dish.id)}>
        Swaps<span className="unseen"> of {dish.title}</span>
      </Link>
      <Link
        className={link}
        href={fitHref(episodeId, dish.id)}
        aria-label={`Fit it to a target: ${dish.title}`}
      >
        Fit it to a target
      </Link>
    </p>
  );
}

/** The form of the ingredient that is being edited or weighed. */
function OpenLine({ view, dish }: { readonly view: EpisodeView; readonly dish: Dish }) {
  const { lines } = dish.recipe;
  for (const each of lines) {
    const of = weighedIn(view.editing, each.id);
    if (of) return <WeighLine view={view} recipe={dish.recipe} line={each} of={of} />;
  }
  const line = lines.find((each) => isEdited(view, each));
  return line ? <EditLine view={view} dish={dish} line={line} /> : null;
}

/** Whether an ingredient's form stands open, that of a food or that of a dish. */
function isEdited({ editing }: EpisodeView, { id }: RecipeLine): boolean {
  return editing === id || editing === dishKey(id);
}

function EditLine({
  view,
  dish,
  line,
}: {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly line: RecipeLine;
}) {
  const { lines } = dish.recipe;
  const place = { episodeId: view.file.episode.id, recipeId: dish.recipe.id, lineId: line.id };
  const episodeId = view.file.episode.id;
  const food = view.file.foods.find((each) => each.id === line.foodId) ?? null;
  const hidden = { episodeId, lineId: line.id, rev: revOf(view, line.id) };
  return (
    <OpenedHere rowId={`row-${line.id}`} closeHref={rowHref(episodeId, line.id)}>
      {line.madeFrom || view.editing === dishKey(line.id) ? (
        <EditFromDish view={view} dish={dish} line={line} />
      ) : (
        <LineForm
          kept={view.kept ?? null}
          id={`line-${line.id}`}
          action={saveLine}
          hidden={hidden}
          line={lineTexts(line, food)}
          about={lineAbout(line, food)}
          look={view.look ?? ''}
          units={unitChoices(line, food)}
          states={STATE_CHOICES}
          submit="Save"
          cancelHref={rowHref(episodeId, line.id)}
        />
      )}
      <LineGaps view={view} dish={dish} lineId={line.id} />
      <div className="mt-3 flex flex-wrap items-center gap-x-5 gap-y-1">
        {!line.madeFrom && view.editing === line.id && (
          <EditLink href={dishHref(episodeId, line.id)} what={line.text}>
            Make it from a dish
          </EditLink>
        )}
        {lines[0]?.id !== line.id && (
          <ButtonForm
            action={moveLine}
            values={{ ...place, to: 'up' }}
            label={`Move up: ${line.text}`}
          >
            Move up
          </ButtonForm>
        )}
        {lines.at(-1)?.id !== line.id && (
          <ButtonForm
            action={moveLine}
            values={{ ...place, to: 'down' }}
            label={`Move down: ${line.text}`}
          >
            Move down
          </ButtonForm>
        )}
        <ButtonForm
          action={removeLine}
          values={hidden}
          tone="hand"
          label={`Take out of the dish: ${line.text}`}
        >
          Take out of the dish
        </ButtonForm>
      </div>
    </OpenedHere>
  );
}
