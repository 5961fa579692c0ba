import Link from 'next/link';
import type { WatchedLot } from '#lib/shopping/watched-lots';
import { printGrams } from '#lib/units/print';
import { printDay } from '#lib/units/print-date';
import { LotEndings } from './lot-endings';

/** What is past and what ends this week, each with the reason and the two presses that settle it. */
export function WatchList({ lots }: { readonly lots: readonly WatchedLot[] }) {
  if (lots.length === 0) {
    return (
      <p className="mt-1 text-soft">
        Nothing that you keep account of. Lots with a use-by, or opened ones, stand here a week
        before they end.
      </p>
    );
  }
  return (
    <ul className="mt-1">
      {lots.map(({ food, lot, mg, last, past }) => {
        const of = `${printGrams(mg)} g ${food.name}`;
        return (
          <li
            key={lot.id}
            className="grid gap-x-6 border-b border-line py-2 md:grid-cols-[minmax(0,1fr)_auto] md:items-center"
          >
            <div className="min-w-0">
              <Link
                className="link inline-flex min-h-11 items-center"
                href={`/pantry/foods/${food.id}#row-${lot.id}`}
              >
                {food.name}
              </Link>{' '}
              <span>
                {printGrams(mg)} g {lot.place}
              </span>
              <span className={past ? 'block border-l-[6px] border-hand pl-3' : 'block text-soft'}>
                {past ? 'Not counted any more' : `Until ${printDay(last.on)}`}: {last.why}
              </span>
            </div>
            <div className="flex flex-wrap items-center gap-3 py-1 print:hidden">
              <LotEndings lotId={lot.id} of={of} />
            </div>
          </li>
        );
      })}
    </ul>
  );
}
