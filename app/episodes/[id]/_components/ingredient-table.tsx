import type { ReactNode } from 'react';
import { FigureText } from '../../../_ui/figure-view';
import { barPercents } from '../../../_ui/geometry';
import { PROVISIONAL_WORDS } from '#lib/figures/provisional-words';
import { PROVISIONAL } from '../../../_ui/provisional';
import { MoveHandle } from '../../../_ui/reorder/move-handle';
import { Reorder } from '../../../_ui/reorder/reorder';
import { Table, Th } from '../../../_ui/table';
import { STATE_WORDS } from '../../../_ui/words';
import type { Dish } from '#lib/episode/context';
import { takenWords } from '#lib/episode/made-from';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { boundedValues } from '#lib/figures/bound-offer';
import type { DishFigures, LineFigures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Bounds } from '#lib/units/bounds';
import { printGrams } from '#lib/units/print';
import { orderLines } from '../actions';
import { breakdownRowHref } from '../breakdown/href';
import { BoundedNotes } from './bound-offers';
import { EditLink } from './edit-link';
import { GapText, LineFacts } from './line-facts';
import { MadeFrom } from './made-from';
import { measureWords } from './measure-choices';
import { RowKeys } from './row-keys';
import { dishKey, editHref, weighedIn, weighHref, type EpisodeView } from './view';
import { weighedWords } from './weighed-words';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly figures: DishFigures;
  /** The form of the ingredient that is being edited or weighed. */
  readonly form: ReactNode;
}

const COLUMNS = 6;

/** A dish's ingredients: grams as eaten, state, source and what each adds. Open ones are hatched. */
export function IngredientTable({ view, dish, figures, form }: Props) {
  const whole = { kind: 'whole', segmentId: dish.id } as const;
  const hrefOf = (nutrient: Nutrient, lineId: string) =>
    breakdownRowHref(view.file.episode.id, whole, nutrient, lineId);
  const bounded = boundedValues(view.file, dish);
  const bars = barPercents(figures.lines.map((line) => known(line.figures.energyKcal)));
  const head = (
    <>
      <Th>ingredient</Th>
      <Th number>grams</Th>
      <Th side>weighed</Th>
      <Th side>source</Th>
      <Th>calories</Th>
      <Th number>protein</Th>
    </>
  );
  return (
    <Reorder
      ids={dish.recipe.lines.map(({ id }) => id)}
      names={dish.recipe.lines.map(({ text }) => text)}
      action={orderLines}
      hidden={{ episodeId: view.file.episode.id, recipeId: dish.recipe.id }}
    >
      <RowKeys>
        <Table caption={`${dish.title}: ingredients`} head={head} stacks>
          {figures.lines.map((line, index) => {
            const written = dish.recipe.lines[index];
            if (!written) return null;
            const open = line.gap !== null;
            const unconfirmed = written.match === 'provisional' && line.foodName !== null;
            const provisional = unconfirmed || written.photographed !== null;
            const weighed = weighedWords(dish.recipe, line.lineId, view.file.kitchen);
            const food = view.file.foods.find(({ id }) => id === line.foodId) ?? null;
            const or = view.file.foods.find(({ id }) => id === written.orFoodId);
            const measure = weighed ? null : measureWords(written, food);
            const opened =
              [line.lineId, dishKey(line.lineId)].some((key) => key === view.editing) ||
              weighedIn(view.editing, line.lineId) !== null;
            return (
              <LineRows
                key={line.lineId}
                line={line}
                first={index === 0}
                ground={
                  open || isOpenDish(written, line) ? 'hatch' : provisional ? PROVISIONAL : ''
                }
                form={opened && form}
              >
                <Cell wide>
                  {line.text}
                  {written.note && <span className="text-soft"> {written.note}</span>}
                  <span className="block text-fine text-soft">
                    {written.madeFrom ? (
                      <MadeFrom view={view} line={written} />
                    ) : (
                      (line.foodName ?? 'no food chosen')
                    )}
                    {or && ` or ${or.name}`}
                    {measure && `, ${measure}`}
                    {unconfirmed && <b className="font-semibold"> · not confirmed</b>}
                    {written.photographed !== null && (
                      <b className="font-semibold"> · {PROVISIONAL_WORDS.photo}</b>
                    )}
                    <span className="md:hidden">
                      {!written.madeFrom && `, ${STATE_WORDS[written.state]}`}
                      {line.source && `, ${line.source}`}
                    </span>{' '}
                    <EditLink href={editHref(view.file.episode.id, line.lineId)} what={line.text} />{' '}
                    <EditLink href={weighHref(view.file.episode.id, line.lineId)} what={line.text}>
                      Weigh
                    </EditLink>{' '}
                    {dish.recipe.lines.length > 1 && (
                      <MoveHandle id={line.lineId} what={line.text} />
                    )}
                    <LineFacts view={view} recipe={dish.recipe} line={written} />
                  </span>
                  <BoundedNotes
                    view={view}
                    values={bounded.filter(({ lineId }) => lineId === line.lineId)}
                  />
                </Cell>
                <Cell number>
                  {line.eatenMg ? <Grams mass={line.eatenMg} /> : takenOrOpen(written, open)}
                </Cell>
                <Cell side>{written.madeFrom ? '–' : STATE_WORDS[written.state]}</Cell>
                <Cell side fine>
                  {line.source ?? '–'}
                </Cell>
                {open ? (
                  <td colSpan={2} className="py-2 align-top font-semibold">
                    <GapText view={view} line={written} gap={line.gap ?? 'noFood'} />
                  </td>
                ) : (
                  <>
                    <Cell>
                      <Contribution
                        figure={line.figures.energyKcal}
                        href={hrefOf('energyKcal', line.lineId)}
                        percent={bars[index] ?? 0}
                      />
                    </Cell>
                    <Cell number>
                      {line.figures.protein && (
                        <span className="max-md:after:content-['_protein']">
                          <FigureText
                            figure={line.figures.protein}
                            href={hrefOf('protein', line.lineId)}
                            whisker
                          />
                        </span>
                      )}
                    </Cell>
                  </>
                )}
              </LineRows>
            );
          })}
        </Table>
      </RowKeys>
    </Reorder>
  );
}

/** Whether an ingredient is a dish of which nobody knows what it holds. */
function isOpenDish({ madeFrom }: RecipeLine, { figures }: LineFigures): boolean {
  const energy = figures.energyKcal;
  return madeFrom !== null && energy !== undefined && figureStatus(energy) === 'open';
}

/** Batches or portions of a dish, which is what is known of an ingredient without grams. */
function takenOrOpen(line: RecipeLine, open: boolean): string {
  return (open ? null : takenWords(line)) ?? 'open';
}

function LineRows({
  line,
  first,
  ground,
  form,
  children,
}: {
  readonly line: LineFigures;
  /** Where the keys come in. */
  readonly first: boolean;
  /** The hatch behind a row that is open or waits. */
  readonly ground: string;
  readonly form: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <>
      <tr
        id={`row-${line.lineId}`}
        className={`border-b border-line data-held:bg-sunk ${ground} ${form ? 'border-transparent' : ''}`}
        data-member={line.lineId}
        tabIndex={first ? 0 : -1}
      >
        {children}
      </tr>
      {form && (
        <tr className="border-b-[1.5px] border-ink">
          <td colSpan={COLUMNS} className="pt-1 pb-5">
            {form}
          </td>
        </tr>
      )}
    </>
  );
}

function Cell({
  children,
  number = false,
  fine = false,
  wide = false,
  side = false,
}: {
  readonly children: ReactNode;
  readonly number?: boolean;
  readonly fine?: boolean;
  readonly wide?: boolean;
  /** Stands under the ingredient instead where the page is narrow. */
  readonly side?: boolean;
}) {
  const shape = number
    ? 'whitespace-nowrap md:text-right'
    : fine
      ? 'text-fine whitespace-nowrap'
      : side
        ? 'whitespace-nowrap'
        : '';
  return (
    <td
      className={`py-2 pr-4 align-top last:pr-0 ${wide ? 'md:min-w-52' : ''} ${side ? 'max-md:hidden' : ''} ${shape}`}
    >
      {children}
    </td>
  );
}

function Grams({ mass }: { readonly mass: Bounds }) {
  const low = printGrams(mass.low);
  const high = printGrams(mass.high);
  const value = printGrams(mass.value);
  return (
    <>
      <span className="max-md:after:content-['_g']">{value}</span>
      {(low !== value || high !== value) && (
        <span className="text-fine text-soft max-md:ml-1.5 md:block">
          {low}–{high}
        </span>
      )}
    </>
  );
}

function Contribution({
  figure,
  href,
  percent,
}: {
  readonly figure: Figure | undefined;
  readonly href: string;
  readonly percent: number;
}) {
  if (!figure) return null;
  return (
    <span className="flex items-center gap-2.5 md:min-w-36">
      <span className="md:min-w-20 md:text-right">
        <FigureText figure={figure} href={href} whisker />
      </span>
      <span aria-hidden="true" className="h-2.5 flex-1 max-md:hidden">
        <span className="block h-2.5 bg-ink" style={{ width: `${percent}%` }} />
      </span>
    </span>
  );
}

/** The drawn length of a contribution: nothing is drawn for what is open. */
function known(figure: Figure | undefined): number {
  return figure && figureStatus(figure) !== 'open' ? figure.value : 0;
}
