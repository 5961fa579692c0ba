import { RowHead, Table, Th, Tr } from '../../../../_ui/table';
import type { Breakdown } from '#lib/figures/breakdown';
import { percent } from '#lib/figures/breakdown-advice';
import { printBreakdown, type PrintedRow } from '#lib/figures/breakdown-words';
import type { DishPlace } from '#lib/store/read-dishes';
import { breakdownHref } from '../href';
import { Cell, Fine, IngredientRow } from './ingredient-row';

interface Props {
  readonly of: Breakdown;
  /** The amount in words. */
  readonly what: string;
  /** Where the dishes stand that rows are made from, by their recipe's id. */
  readonly places: Readonly<Record<string, DishPlace>>;
}

const COLUMNS = 6;

/** The table a number comes from. Rows of a known number add up to its last row, to the last digit. */
export function BreakdownTable({ of, what, places }: Props) {
  const { rows, sum, unit } = printBreakdown(of);
  const head = (
    <>
      <Th>ingredient, its food and source</Th>
      <Th number>grams</Th>
      <Th number>the food has</Th>
      <Th number>adds, {unit}</Th>
      <Th number>of total</Th>
      <Th number>of uncertainty</Th>
    </>
  );
  return (
    <Table caption={`Breakdown: ${what}`} head={head} stacks close>
      {rows.flatMap((printed, index) => [
        ...(of.scope.kind === 'day' && startsDish(rows, index)
          ? [<DishHead key={printed.row.segmentId} title={printed.row.dish} />]
          : []),
        <IngredientRow
          key={printed.row.lineId}
          printed={printed}
          unit={unit}
          dishHref={dishHref(printed, of, places)}
        />,
      ])}
      {of.finishedShare !== null && (
        <Tr>
          <RowHead>the weight of the finished dish, which all of it is divided by</RowHead>
          <td colSpan={COLUMNS - 2} className="max-md:hidden print:table-cell" />
          <Cell after="of uncertainty">{percent(of.finishedShare)}</Cell>
        </Tr>
      )}
      <tr className="border-t-[1.5px] border-ink">
        <RowHead>
          <b>{what}</b>
          <Fine>{sum.range}</Fine>
        </RowHead>
        <td colSpan={2} className="max-md:hidden print:table-cell" />
        <Cell>
          <b>{sum.text}</b>
        </Cell>
        <td colSpan={2} className="max-md:hidden print:table-cell" />
      </tr>
    </Table>
  );
}

/** The breakdown of the dish that a row is made from; null where it is of a food, or that dish stands nowhere. */
function dishHref(
  { row: { madeFrom } }: PrintedRow,
  { nutrient }: Breakdown,
  places: Props['places'],
): string | null {
  const place = places[madeFrom?.recipeId ?? ''];
  if (!place) return null;
  return breakdownHref(place.episodeId, { kind: 'whole', segmentId: place.segmentId }, nutrient);
}

function startsDish(rows: readonly PrintedRow[], index: number): boolean {
  return rows[index - 1]?.row.segmentId !== rows[index]?.row.segmentId;
}

function DishHead({ title }: { readonly title: string }) {
  return (
    <tr className="border-b border-ink">
      <th
        scope="colgroup"
        colSpan={COLUMNS}
        className="pt-4 pb-1 text-left font-slate text-head font-semibold print:pt-2"
      >
        {title}
      </th>
    </tr>
  );
}
