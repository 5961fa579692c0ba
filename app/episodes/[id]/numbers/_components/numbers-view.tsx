import Link from 'next/link';
import { EmptyState } from '../../../../_ui/empty-state';
import { FigureList, FigureView, type FigureSize } from '../../../../_ui/figure-view';
import { PastedText } from '../../../../_ui/pasted-text';
import { SlateHead } from '../../../../_ui/slate-head';
import { dishesOf, type Dish } from '#lib/episode/context';
import type { DishFigures, Figures } from '#lib/figures/episode-figures';
import type { EnergyStep } from '#lib/episode/schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { SaidStanding } from '#lib/overview/said-standing';
import type { Description } from '#lib/publish/description';
import { lockWords, type LockTold } from '#lib/publish/lock-words';
import { Disclosure } from '../../../../_ui/disclosure';
import { DishRemarks } from '../../_components/dish-remarks';
import { MatchPart } from '../../_components/match-part';
import { PasteForm } from '../../_components/paste-form';
import { SaidList } from '../../_components/said-list';
import { revOf, type EpisodeView } from '../../_components/view';
import { WrittenStep } from '../../_components/written-step';
import { breakdownHref } from '../../breakdown/href';
import { CopyAndLock } from '../../publish/_components/copy-and-lock';
import { LockLine } from '../../publish/_components/lock-line';
import { NetCarbs } from './net-carbs';
import { SayDayPart, SayPart } from './say-part';

interface Props {
  readonly view: EpisodeView;
  readonly description: Description;
  /** How the numbers of the description stand to the lock. */
  readonly lock: LockTold;
  /** What was said in front of the camera, as it stands now. */
  readonly said?: readonly SaidStanding[];
  /** What calories are said to, where the person chose; else as their likely range supports. */
  readonly energyStep?: EnergyStep | undefined;
}

const TEXT = 'short-description';

/** The short way: each dish's numbers, what they wait for, a line to say, and the description. Nothing else is asked. */
export function NumbersView({ view, description, lock, said = [], energyStep }: Props) {
  const { episode } = view.file;
  const dishes = dishesOf(episode.segments);
  return (
    <>
      <SlateHead kind="Numbers" title={episode.title} />
      {dishes.length === 0 && (
        <EmptyState title="No dish yet">
          <Link className="link" href={`/episodes/${episode.id}`}>
            Add a dish to the running order
          </Link>
          , and paste its ingredients.
        </EmptyState>
      )}
      {/* These are the numbers of now, whatever goes out. */}
      {dishes.length > 0 && <LockLine episodeId={episode.id} told={{ ...lock, ofLock: false }} />}
      <div className="grid gap-x-14 gap-y-10 lg:grid-cols-[minmax(0,1.5fr)_minmax(0,1fr)]">
        <div className="grid min-w-0 content-start gap-12">
          {dishes.map((dish) => (
            <DishNumbers
              key={dish.id}
              view={view}
              dish={dish}
              alone={dishes.length === 1}
              said={said.filter(({ segmentId }) => segmentId === dish.id)}
              energyStep={energyStep}
            />
          ))}
          {dishes.length > 1 && <SayDayPart view={view} energyStep={energyStep} />}
          <SaidPart
            view={view}
            about="The day"
            said={said.filter(({ segmentId }) => segmentId === null)}
          />
        </div>
        {dishes.length > 0 && (
          <section aria-labelledby="short-text" className="min-w-0">
            <h2 id="short-text">Description</h2>
            <div className="mt-3">
              <CopyAndLock
                episodeId={episode.id}
                text={description.text}
                form={description.form}
                without=""
                shownIn={TEXT}
                label="Copy the description"
              />
            </div>
            <WrittenStep episode={episode} rev={revOf(view, episode.id)} />
            {lock.standing === 'broken' && lock.ofLock && (
              <p className="mt-2">{lockWords({ ...lock, reason: null })}</p>
            )}
            <div className="mt-4">
              <PastedText id={TEXT} text={description.text} />
            </div>
            <p className="mt-4 text-fine text-soft print:hidden">
              This is an episode already:{' '}
              <Link className="link" href={`/episodes/${episode.id}`}>
                give it steps, shots and more dishes
              </Link>
              , and nothing is typed again.
            </p>
          </section>
        )}
      </div>
    </>
  );
}

interface DishProps {
  readonly view: EpisodeView;
  readonly dish: Dish;
  /** The only dish, whose title the slate says already. */
  readonly alone: boolean;
  readonly said: readonly SaidStanding[];
  readonly energyStep: EnergyStep | undefined;
}

function DishNumbers({ view, dish, alone, said, energyStep }: DishProps) {
  const figures = view.figures.dishes.find(({ segmentId }) => segmentId === dish.id);
  const { id: episodeId } = view.file.episode;
  const empty = dish.recipe.lines.length === 0;
  return (
    <section aria-label={dish.title} className="min-w-0">
      {!alone && <h2 className="mb-4">{dish.title}</h2>}
      {figures && !empty && (
        <>
          <Amounts view={view} dish={dish} figures={figures} />
          <NetCarbs view={view} dish={dish} figures={figures} />
          <MatchPart view={view} dish={dish} figures={figures} />
          <DishRemarks view={view} dish={dish} />
          <SayPart view={view} dish={dish} figures={figures} energyStep={energyStep} />
        </>
      )}
      <SaidPart view={view} about={dish.title} said={said} />
      <div className="mt-6">
        <Disclosure words={empty ? 'Paste the ingredients' : 'More ingredients'} open={empty}>
          <PasteForm episodeId={episodeId} recipeId={dish.recipe.id} />
        </Disclosure>
      </div>
    </section>
  );
}

interface SaidProps {
  readonly view: EpisodeView;
  readonly about: string;
  readonly said: readonly SaidStanding[];
}

/** What was said in front of the camera: fixed there and then, so a change under it is told here. */
function SaidPart({ view, about, said }: SaidProps) {
  if (said.length === 0) return null;
  return (
    <section aria-label={`Said: ${about}`} className="mt-8">
      <h3>Said in front of the camera</h3>
      <SaidList episodeId={view.file.episode.id} said={said} named />
    </section>
  );
}

type FiguresProps = Omit<DishProps, 'alone' | 'said' | 'energyStep'> & {
  readonly figures: DishFigures;
};

/** The equal portion that is said and shown first, where the dish has one. */
function firstPortion({ recipe }: Dish): { readonly id: string; readonly of: number } | null {
  return recipe.portions.find((portion) => portion.kind === 'count') ?? null;
}

/** One portion large, where there are equal ones, and the whole dish; one sentence while all of it is open. */
function Amounts({ view, dish, figures }: FiguresProps) {
  const portion = firstPortion(dish);
  const one = portion && figures.portions.find(({ portionId }) => portionId === portion.id);
  const whole = { kind: 'whole', segmentId: dish.id } as const;
  const numbers = HEADLINE_NUTRIENTS.map((nutrient) => view.numbers(nutrient, whole));
  if (numbers.every(({ number }) => number === null)) {
    return (
      <p className="max-w-[56ch] text-lead">
        <b className="block font-slate text-title font-semibold">No number yet</b>
        {numbers[0]?.range}
      </p>
    );
  }
  return (
    <div className="grid gap-8">
      {portion && one && (
        <div>
          <h3 className="mb-3">One of {portion.of}</h3>
          <Headline
            view={view}
            figures={one.figures}
            scope={{ kind: 'portion', portionId: portion.id }}
            first="lead"
            others="large"
          />
        </div>
      )}
      <div>
        <h3 className="mb-3">The whole dish</h3>
        <Headline
          view={view}
          figures={figures.whole}
          scope={whole}
          first={portion ? 'usual' : 'lead'}
          others={portion ? 'usual' : 'large'}
        />
      </div>
    </div>
  );
}

interface HeadlineProps {
  readonly view: EpisodeView;
  readonly figures: Figures;
  readonly scope: NumberScope;
  readonly first: FigureSize;
  readonly others: FigureSize;
}

function Headline({ view, figures, scope, first, others }: HeadlineProps) {
  return (
    <FigureList>
      {HEADLINE_NUTRIENTS.map((nutrient, index) => {
        const figure = figures[nutrient];
        return (
          figure && (
            <FigureView
              key={nutrient}
              figure={figure}
              published={view.numbers(nutrient, scope)}
              href={breakdownHref(view.file.episode.id, scope, nutrient)}
              size={index === 0 ? first : others}
            />
          )
        );
      })}
    </FigureList>
  );
}
