import Link from 'next/link';
import type { ReactNode } from 'react';
import { NotConfirmed } from '../../../../_ui/provisional';
import { RowHead, Tr } from '../../../../_ui/table';
import { Whisker } from '../../../../_ui/whisker';
import type { BreakdownRow } from '#lib/figures/breakdown';
import type { PrintedRow, PrintedValue } from '#lib/figures/breakdown-words';
import { figureStatus } from '#lib/figures/figure';

interface Props {
  readonly printed: PrintedRow;
  readonly unit: string;
  /** Where the breakdown of the dish is that it is made from; null where there is none. */
  readonly dishHref?: string | null;
}

/** An ingredient's part of a number: its food and source, grams, value, what it adds, and its two shares. */
export function IngredientRow({ printed, unit, dishHref = null }: Props) {
  const { row, grams, gramsRange, foods, bounded, adds, range } = printed;
  const { shareOfTotal, shareOfUncertainty } = printed;
  const known = figureStatus(row.contribution) === 'known';
  return (
    <Tr open={!known} provisional={known && row.provisional} id={`line-${row.lineId}`}>
      <RowHead>
        {row.text}
        <Fine>
          <FoodWords row={row} foods={foods} dishHref={dishHref} />
          {row.turned && `; ${row.turned}`}
          {bounded && `; ${bounded}`}
          <span className="print:hidden">{sharedWords(row)}</span>
        </Fine>
        {row.provisional && <NotConfirmed words={row.waits} />}
      </RowHead>
      <Cell after={row.massMg ? 'g' : ''} fine={gramsRange}>
        {grams}
      </Cell>
      <Cell fine={foods.flatMap(({ range: of }) => of || []).join(' or ')}>
        {foods.map(({ foodId, value }) => (
          <span key={foodId} className="block">
            {value}
          </span>
        ))}
      </Cell>
      <Cell after={known ? unit : ''} fine={range}>
        <Whisker figure={row.contribution} small /> {adds}
      </Cell>
      <Cell after={shareOfTotal && 'of total'}>{shareOfTotal}</Cell>
      <Cell after={shareOfUncertainty && 'of uncertainty'} broad>
        {shareOfUncertainty}
      </Cell>
    </Tr>
  );
}

interface CellProps {
  /** The unit or the column’s head, said on a phone, where the heads are out of sight. */
  readonly after?: string;
  /** The line under the number. */
  readonly fine?: string;
  /** Takes two columns where rows stack. */
  readonly broad?: boolean;
  readonly children?: ReactNode;
}

/** A cell of numbers: at the right of its column, and in line with the others where rows stack. */
export function Cell({ after = '', fine = '', broad = false, children }: CellProps) {
  return (
    <td
      className={`py-2 pr-3 align-top last:pr-0 md:text-right print:text-right print:whitespace-nowrap ${broad ? 'max-md:col-span-2' : ''}`}
    >
      {children}
      {after && <span className="text-fine text-soft md:hidden print:hidden"> {after}</span>}
      <Fine>{fine}</Fine>
    </td>
  );
}

/** The line under a number or a name. */
export function Fine({ children }: { readonly children: ReactNode }) {
  return children ? (
    <span className="block text-fine text-soft print:text-[9pt] print:leading-tight">
      {children}
    </span>
  ) : null;
}

function FoodWords({
  row: { gap, madeFrom },
  foods,
  dishHref,
}: {
  readonly row: BreakdownRow;
  readonly foods: readonly PrintedValue[];
  readonly dishHref: string | null;
}) {
  if (madeFrom) {
    const { title } = madeFrom;
    return (
      <>
        a dish:{' '}
        {dishHref === null ? (
          title
        ) : (
          <Link className="link inline-flex min-h-6 items-center" href={dishHref} prefetch={false}>
            {title}
          </Link>
        )}
      </>
    );
  }
  if (gap === 'noFood') return 'no food chosen';
  const each = foods.map(({ name, source, stated }) =>
    [name, source, stated].filter((part) => part !== '').join(', '),
  );
  return each.join(' or ');
}

/** Why its uncertainty is not its own alone: one reading, one scale or one food stands behind several rows. */
function sharedWords({ sharedWith }: BreakdownRow): string {
  const [only] = sharedWith;
  if (only === undefined) return '';
  return `; shares an error with ${sharedWith.length === 1 ? only : `${sharedWith.length} others`}`;
}
