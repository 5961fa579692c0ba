import Link from 'next/link';
import { ButtonForm } from '../../_forms/button-form';
import { EmptyState } from '../../_ui/empty-state';
import { lotMg } from '#lib/shopping/shopping-list';
import { MOVE_WORDS, signedGrams } from '#lib/shopping/stock-move';
import type { Page } from '#lib/store/page';
import type { PantryLot } from '#lib/store/read-pantry';
import { printGrams } from '#lib/units/print';
import { printDay } from '#lib/units/print-date';
import { removeLot } from '../actions';
import { LotForm, MoveForm } from './lot-forms';

interface Props {
  readonly lots: Page<PantryLot>;
  /** The lot whose forms stand open, or null. */
  readonly editing: string | null;
  /** Today's date in the kitchen, to say what is past its use-by. */
  readonly today: string;
}

/** What is in stock: each lot with its place, its date and its ledger. */
export function Stock({ lots, editing, today }: Props) {
  if (lots.rows.length === 0) {
    return (
      <EmptyState title="Nothing in stock yet">
        Look a food up above and put it into stock from its page: the shopping list counts it off.
      </EmptyState>
    );
  }
  return (
    <>
      <ul className="mt-2">
        {lots.rows.map((row) => (
          <LotRow key={row.id} row={row} open={editing === row.id} today={today} />
        ))}
      </ul>
      {lots.next && (
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/pantry?lots=${lots.next}#stock`}
        >
          Older lots
        </Link>
      )}
    </>
  );
}

function LotRow({
  row,
  open,
  today,
}: {
  readonly row: PantryLot;
  readonly open: boolean;
  readonly today: string;
}) {
  const { lot, foodName, rev } = row;
  return (
    <li id={`row-${lot.id}`} className="border-b border-line py-2">
      <div className="grid grid-cols-[1fr_auto] items-baseline gap-x-4 md:grid-cols-[2.4fr_1fr_1fr_6rem]">
        <span className="flex flex-wrap items-baseline gap-x-3">
          <Link className="link" href={`/pantry/foods/${lot.foodId}`}>
            {foodName}
          </Link>
          <details open={open} className="open:basis-full">
            <summary className="link inline-flex min-h-6 items-center text-fine text-soft">
              ledger<span className="unseen"> of {foodName}</span>
            </summary>
            <ul className="pb-2 text-fine">
              {lot.moves.map((move) => (
                <li key={move.id}>
                  {printDay(move.at.slice(0, 10))}: {MOVE_WORDS[move.kind]}{' '}
                  {signedGrams(move.deltaMg)}
                </li>
              ))}
            </ul>
          </details>
          {!open && (
            <Link
              href={`/pantry?lot=${lot.id}#row-${lot.id}`}
              className="link inline-flex min-h-6 items-center text-fine"
            >
              Change<span className="unseen"> {foodName}</span>
            </Link>
          )}
        </span>
        <span className="text-soft max-md:order-last">{lot.place || 'no place noted'}</span>
        <span className="max-md:order-last">
          <UseBy useBy={lot.useBy} today={today} />
        </span>
        <b className="text-right">{printGrams(lotMg(lot))} g</b>
      </div>
      {open && (
        <div className="my-2 grid gap-5 border-[1.5px] border-ink bg-raised p-4">
          <MoveForm lotId={lot.id} />
          <LotForm lot={lot} rev={rev} />
          <ButtonForm action={removeLot} values={{ lotId: lot.id, rev }} tone="hand">
            Take this lot off the list
          </ButtonForm>
        </div>
      )}
    </li>
  );
}

function UseBy({ useBy, today }: { readonly useBy: string | null; readonly today: string }) {
  if (useBy === null) return <span className="text-soft">no date</span>;
  if (useBy < today) return <b className="text-hand">use by {printDay(useBy)}: past</b>;
  return <>use by {printDay(useBy)}</>;
}
