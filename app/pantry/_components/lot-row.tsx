import { ButtonForm } from '../../_forms/button-form';
import type { StockLot } from '#lib/episode/stock-schema';
import type { LastDay } from '#lib/shopping/counted-stock';
import { lotMg } from '#lib/shopping/shopping-list';
import { MOVE_WORDS, signedGrams } from '#lib/shopping/stock-move';
import { printGrams } from '#lib/units/print';
import { printDay } from '#lib/units/print-date';
import { openLot, removeLot } from '../stock-actions';
import { LotEndings } from './lot-endings';
import { LotForm, MoveForm } from './lot-forms';

interface Props {
  readonly lot: StockLot;
  readonly rev: number;
  /** Its last day and why; null where nothing limits it. */
  readonly last: LastDay | null;
  readonly today: string;
}

/** One lot: how much, where, until when; what happens most in one press, the rest folded away. */
export function LotRow({ lot, rev, last, today }: Props) {
  const { id } = lot;
  const there = lotMg(lot) > 0;
  const past = last !== null && last.on < today;
  const left = `${printGrams(lotMg(lot))} g`;
  const of = lot.place === '' ? left : `${left}, ${lot.place}`;
  return (
    <li id={`row-${id}`} className="border-b border-line py-2">
      <div className="flex flex-wrap items-baseline justify-between gap-x-4">
        <span>
          <b className="font-semibold">{left}</b> {lot.place || 'no place noted'}
        </span>
        <span className="text-soft">
          {[
            lot.useBy !== null && `use by ${printDay(lot.useBy)}`,
            lot.openedOn !== null && `opened ${printDay(lot.openedOn)}`,
          ]
            .filter(Boolean)
            .join(' · ') || 'no date'}
        </span>
      </div>
      {there && last && (
        <p className={past ? 'mt-1 border-l-[6px] border-hand pl-3' : 'text-fine text-soft'}>
          {past ? 'Not counted any more' : `Counts until ${printDay(last.on)}`}: {last.why}
        </p>
      )}
      {there && (
        <div className="mt-1 flex flex-wrap items-center gap-x-3 gap-y-1 print:hidden">
          {lot.openedOn === null && (
            <ButtonForm
              action={openLot}
              values={{ lotId: id, rev }}
              tone="plain"
              size="usual"
              label={`Opened today: ${of}`}
            >
              Opened today
            </ButtonForm>
          )}
          <LotEndings lotId={id} of={of} />
        </div>
      )}
      <details className="print:hidden">
        <summary className="link min-h-11 content-center">
          Amounts, place and dates<span className="unseen"> of {of}</span>
        </summary>
        <div className="grid gap-5 pt-1 pb-3">
          <MoveForm lotId={id} />
          <LotForm lot={lot} rev={rev} />
          <ul className="text-fine" aria-label={`What happened to ${of}`}>
            {lot.moves.map((move) => (
              <li key={move.id}>
                {printDay(move.at.slice(0, 10))}: {MOVE_WORDS[move.kind]}{' '}
                {signedGrams(move.deltaMg)}
              </li>
            ))}
          </ul>
          <ButtonForm action={removeLot} values={{ lotId: id, rev }} tone="hand">
            Take this lot off the list
          </ButtonForm>
        </div>
      </details>
    </li>
  );
}
