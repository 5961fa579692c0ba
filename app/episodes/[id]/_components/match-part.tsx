import Link from 'next/link';
import { ButtonForm } from '../../../_forms/button-form';
import { PROVISIONAL } from '../../../_ui/provisional';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { Dish } from '#lib/episode/context';
import type { DishFigures } from '#lib/figures/episode-figures';
import { waitingLines, type WaitingLine } from '#lib/overview/waiting-lines';
import { printGrams } from '#lib/units/print';
import { confirmAll, confirmMatch, takeFood, takeMeasure } from '../match-actions';
import { GramsForm } from './grams-form';
import { KeepFocus } from './keep-focus';
import { DishGap, MadeFrom } from './made-from';
import { openMeasures } from './measure-choices';
import { SecondFood } from './second-food';
import { StatesPart } from './states-part';
import { dishHref, editHref, revOf, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly figures: DishFigures;
}

/** What of a dish waits for the person: matches to confirm, foods to choose, grams to say. Nothing where all is known. */
export function MatchPart({ view, dish, figures }: Props) {
  const waiting = waitingLines(dish.recipe.lines, figures.lines).filter(
    ({ waits, counts }) => counts || waits === 'confirm' || waits === 'within',
  );
  const matches = waiting.filter(({ waits }) => waits === 'confirm').length;
  if (waiting.length === 0) return null;
  const values = { episodeId: view.file.episode.id, recipeId: dish.recipe.id };
  return (
    <section
      id={`confirm-${dish.id}`}
      aria-label={`To confirm: ${dish.title}`}
      className="mt-6 scroll-mt-4 print:hidden"
    >
      <div className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-2 border-b-[1.5px] border-ink pb-2">
        <h3>{headWords(waiting.length, matches)}</h3>
        {matches > 1 && (
          <ButtonForm action={confirmAll} values={values} tone="plain" size="usual">
            Yes to all {matches}
          </ButtonForm>
        )}
      </div>
      <KeepFocus left={waiting.length}>
        <ul>
          {waiting.map((each) => (
            <WaitingRow key={each.line.id} view={view} waiting={each} />
          ))}
        </ul>
      </KeepFocus>
    </section>
  );
}

function headWords(all: number, matches: number): string {
  const open = all - matches;
  const confirm = matches === 1 ? 'Is this the food?' : `Are these the ${matches} foods?`;
  if (open === 0) return confirm;
  const grams = open === 1 ? '1 ingredient is open' : `${open} ingredients are open`;
  return matches === 0 ? grams : `${confirm} And ${grams}.`;
}

function WaitingRow({
  view,
  waiting,
}: {
  readonly view: EpisodeView;
  readonly waiting: WaitingLine;
}) {
  const { line, figures, waits } = waiting;
  if (line.madeFrom) return <WaitingDish view={view} waiting={waiting} />;
  const ids = {
    episodeId: view.file.episode.id,
    lineId: line.id,
    rev: revOf(view, line.id),
  };
  return (
    <li className={`border-b border-line py-2 ${waits === 'confirm' ? PROVISIONAL : ''}`}>
      <div className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1">
        <p className="min-w-0">
          {line.text}
          <span className="block text-fine text-soft">
            {matchedWords(waiting, (view.others[line.id] ?? []).length > 0)}
          </span>
        </p>
        {waits === 'confirm' && (
          <ButtonForm
            action={confirmMatch}
            values={ids}
            tone="plain"
            label={`Yes: ${line.text} is ${figures.foodName ?? ''}`}
          >
            Yes
          </ButtonForm>
        )}
      </div>
      {remarks(line.text).map((remark) => (
        <p key={remark} className="text-fine font-semibold">
          {remark}
        </p>
      ))}
      {figures.gap === 'noGrams' && waiting.counts && (
        <div className="mt-2 grid gap-2">
          <Measures view={view} waiting={waiting} ids={ids} />
          <GramsForm {...ids} what={line.text} />
        </div>
      )}
      {waits === 'states' && <StatesPart view={view} line={line} />}
      {waits !== 'states' && <Others view={view} waiting={waiting} ids={ids} />}
    </li>
  );
}

/** An ingredient that is a dish, and what that waits for. */
function WaitingDish({
  view,
  waiting: { line, waits },
}: {
  readonly view: EpisodeView;
  readonly waiting: WaitingLine;
}) {
  return (
    <li className="border-b border-line py-2">
      <p>
        {line.text}
        <span className="block text-fine text-soft">
          <MadeFrom view={view} line={line} />
        </span>
      </p>
      <p className="text-fine font-semibold">
        <DishGap view={view} line={line} waits={waits} />
      </p>
    </li>
  );
}

/** What the words were matched with, and what that weighs. */
function matchedWords({ figures }: WaitingLine, others: boolean): string {
  if (figures.foodName === null) return others ? 'which food is it?' : 'no food fits these words';
  const grams = figures.eatenMg ? `, ${printGrams(figures.eatenMg.value)} g` : '';
  const source = figures.source ? ` · ${figures.source}` : '';
  return `${figures.foodName}${grams}${source}`;
}

/** What the reader did not understand of an ingredient's words. */
function remarks(text: string): readonly string[] {
  return readIngredient(text).flatMap((part) => part.remarks.map(({ message }) => message));
}

interface OthersProps {
  readonly view: EpisodeView;
  readonly waiting: WaitingLine;
  readonly ids: { readonly episodeId: string; readonly lineId: string; readonly rev: number };
}

/** What one of it may be, by the food's own measures: a press settles it. */
function Measures({ view, waiting, ids }: OthersProps) {
  const { line } = waiting;
  const food = view.file.foods.find(({ id }) => id === line.foodId) ?? null;
  const choices = openMeasures(line, food);
  if (choices.length === 0) return null;
  return (
    <div className="flex flex-wrap items-baseline gap-x-4 gap-y-1">
      <span className="text-fine text-soft">Counted by</span>
      {choices.map(({ value, words }) => (
        <ButtonForm
          key={value}
          action={takeMeasure}
          values={{ ...ids, measureName: value }}
          label={`Count ${line.text} by ${words}`}
        >
          {words}
        </ButtonForm>
      ))}
    </div>
  );
}

/** The ways on where the match is not it: another food, either of two, or its whole form. */
function Others({ view, waiting, ids }: OthersProps) {
  const { line, figures } = waiting;
  const hits = view.others[line.id] ?? [];
  return (
    <details open={figures.foodName === null}>
      <summary className="link min-h-8 content-center text-fine">
        Another food<span className="unseen"> for {line.text}</span>
      </summary>
      <ul className="mt-1 grid gap-1">
        {hits.map(({ id, name, note }) => (
          <li key={id} className="flex flex-wrap items-baseline gap-x-3">
            <ButtonForm
              action={takeFood}
              values={{ ...ids, foodId: id }}
              label={`Count ${line.text} as ${name}`}
            >
              {name}
            </ButtonForm>
            <span className="text-fine text-soft">{note}</span>
          </li>
        ))}
      </ul>
      <p className="mt-1 text-fine">
        <Link
          className="link inline-flex min-h-6 items-center"
          href={editHref(ids.episodeId, line.id)}
        >
          Look by another name, or change its words
        </Link>
        {' · '}
        <Link
          className="link inline-flex min-h-6 items-center"
          href={dishHref(ids.episodeId, line.id)}
        >
          It is a dish
        </Link>
      </p>
      {figures.foodName !== null && (
        <details>
          <summary className="link min-h-8 content-center text-fine">
            I can’t tell which of two<span className="unseen"> for {line.text}</span>
          </summary>
          <div className="mt-1 max-w-md">
            <SecondFood {...ids} first={figures.foodName} />
          </div>
        </details>
      )}
    </details>
  );
}
